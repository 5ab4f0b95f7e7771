// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/findings/question.hpp"

namespace quoin::solver {

/// The solution of a section whose slopes no tensor grid follows: couplings, cold spots,
/// thermometers, probes and surfaces from triangles that follow every edge; its field is that of
/// the triangles read at the nodes of a grid, for pictures and what else walks over a grid. Throws:
/// SolveError.
[[nodiscard]] Solution solution_on_triangles(const Question& question, const Effort& effort);

}  // namespace quoin::solver
