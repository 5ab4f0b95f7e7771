// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <functional>
#include <string>
#include <vector>

#include "solver/solution.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// How a question is solved: by `solver::solution_of`, or by something that gives the same bits.
using Solve = std::function<solver::Solution(const solver::Question&, const solver::Effort&)>;

/// The numbers that all else rests on, of the variant that `result` holds: both purposes solved,
/// psi, humidities and verdicts. Returns remarks on evaporation. Throws: SolveError.
[[nodiscard]] std::vector<std::string> solve_numbers(SolvedVariant& result,
                                                     const solver::Effort& effort,
                                                     const Solve& solve);

}  // namespace quoin::tools
