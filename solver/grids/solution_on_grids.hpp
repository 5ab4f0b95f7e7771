// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/findings/question.hpp"

namespace quoin::solver {

/// Solves a question on grids that follow every edge of its section. While the wanted accuracy is
/// not reached, those strips are cut finer in which the schemes differ in what moves the wanted
/// numbers, and both schemes are solved again, up to the limit of nodes. Spaces lie between 0 and 1
/// (see between_airs.hpp). Throws: SolveError where even the first grid is beyond that limit,
/// before anything is solved; where the linear solver fails on it; where a solution on it breaks a
/// law of physics.
[[nodiscard]] Solution solution_on_grids(const Question& question, const Effort& effort);

}  // namespace quoin::solver
