// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <vector>

#include "solver/linear/linear.hpp"

namespace quoin::solver {

/// A symmetric network without a grid. Shape: one ground a node.
struct LooseNetwork {
  std::vector<double> ground;  ///< W/(m K), as that of FivePointOperator
  std::vector<Link> links;
};

/// The same network, told link by link.
[[nodiscard]] LooseNetwork loose(const FivePointOperator& network);

/// Sparse Cholesky factorisation with minimum degree ordering: the reference
/// the tests compare the multigrid with. Answers are polished by iterative
/// refinement. Throws: SolveError where the factorisation fails.
[[nodiscard]] std::unique_ptr<LinearSolver> direct_solver(const FivePointOperator& network,
                                                          const LinearOptions& options);
[[nodiscard]] std::unique_ptr<LinearSolver> direct_solver(LooseNetwork network,
                                                          const LinearOptions& options);

}  // namespace quoin::solver
