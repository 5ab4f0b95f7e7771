// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "solver/solution.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What is said where a recipe's legs are stated shorter than ISO 10211 wants cut planes to be
/// away: the same section is solved with the legs it gives itself, and its coldest spots are set
/// beside those of `solved`, whose numbers are known. Empty where no leg is shorter. Throws:
/// SolveError.
[[nodiscard]] std::string short_legs_remark(const SolvedVariant& solved,
                                            const solver::Effort& effort);

}  // namespace quoin::tools
