// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "cases/case.hpp"

namespace quoin::cases {

/// The case a text describes. `file` names it in faults.
/// Throws: InputError with all faults of the text.
[[nodiscard]] Case case_of(std::string_view text, const std::string& file);

}  // namespace quoin::cases
