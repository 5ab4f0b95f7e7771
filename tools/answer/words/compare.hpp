// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/results.hpp"

namespace quoin::tools {

/// What each later variant changed against the first, for every inside air both have.
[[nodiscard]] std::vector<Change> changes(const std::vector<SolvedVariant>& variants);

}  // namespace quoin::tools
