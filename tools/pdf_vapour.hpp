// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/page_flow.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// Where vapour would condense and how fast the section dries, set on pages; nothing where no
/// variant asks.
void add_vapour(PageFlow& flow, const Results& results);

}  // namespace quoin::tools
