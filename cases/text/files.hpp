// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// The text of a file that a case names; nothing where there is none. Reading never touches the
/// disk by itself.
using Files = std::function<std::optional<std::string>(const std::string& name)>;

// The text of a table or a case that a file names; absent with a fault. It lies in the folder of
// that file or below, so that a file from elsewhere cannot have others read and quoted.
[[nodiscard]] std::optional<std::string> table_of(const std::string& name, Mark mark,
                                                  const Files& files, FaultList& faults);
[[nodiscard]] std::optional<std::string> case_text_of(const std::string& name, Mark mark,
                                                      const Files& files, FaultList& faults);

}  // namespace quoin::cases
