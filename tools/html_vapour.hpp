// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/results.hpp"

namespace quoin::tools {

/// Where vapour would condense and how fast the section dries, as part of the report page; empty
/// where no variant asks.
[[nodiscard]] std::string vapour_html(const Results& results);

}  // namespace quoin::tools
