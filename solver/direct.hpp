// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>

#include "solver/linear.hpp"

namespace quoin::solver {

/// Sparse Cholesky factorisation with minimum degree ordering: the reference
/// the tests compare the multigrid with. Answers are polished by iterative
/// refinement. Throws: SolveError where the factorisation fails.
[[nodiscard]] std::unique_ptr<LinearSolver> direct_solver(const FivePointOperator& network,
                                                          const LinearOptions& options);

}  // namespace quoin::solver
