// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What was assumed of masonry whose wetness the case does not state, and what damp would do to it:
/// in plain words, one for each material.
[[nodiscard]] std::vector<std::string> wetness_remarks(const SolvedVariant& solved);

}  // namespace quoin::tools
