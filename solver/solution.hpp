// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/findings/question.hpp"

namespace quoin::solver {

/// Where the section follows every edge of its sheet, on grids; else on triangles, which do. On
/// grids: solves by both schemes on two nested ones, one twice as fine as the other, for the bands;
/// while the wanted accuracy is not reached, cuts those strips finer where the schemes differ in
/// what moves the wanted numbers and starts again, up to the limit of nodes; brackets of couplings
/// that are still too wide are narrowed by those of triangles (beside_grids.hpp). Throws:
/// SolveError where even the first grid is beyond that limit, before anything is solved; where the
/// linear solver fails; where a solution breaks a law of physics.
[[nodiscard]] Solution solution_of(const Question& question, const Effort& effort);

/// The same for spaces from 0, the coldest, to 1, the warmest (see between_airs.hpp): what
/// `at_temperatures` brings to any temperatures between which each space lies as it does here.
[[nodiscard]] Solution solution_between(const Question& question, const Effort& effort);

}  // namespace quoin::solver
