// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <optional>
#include <string>

namespace quoin::cases {

/// The text of a file that a case names; nothing where there is none. Reading never touches the
/// disk by itself.
using Files = std::function<std::optional<std::string>(const std::string& name)>;

}  // namespace quoin::cases
