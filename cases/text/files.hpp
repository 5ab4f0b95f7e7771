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

/// The text of a table that a case names; absent with a fault. A table lies in the folder of its
/// case or below, so that a case from elsewhere cannot have other files read and quoted.
[[nodiscard]] std::optional<std::string> table_of(const std::string& name, Mark mark,
                                                  const Files& files, FaultList& faults);

}  // namespace quoin::cases
