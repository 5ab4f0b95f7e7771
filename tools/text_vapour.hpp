// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/results.hpp"
#include "tools/text_table.hpp"

namespace quoin::tools {

/// Where vapour would condense and how fast the section dries, for all variants that ask.
[[nodiscard]] std::string vapour_text(const Results& results, const TextStyle& style);

}  // namespace quoin::tools
