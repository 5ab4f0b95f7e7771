// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/linear/multigrid/level.hpp"

namespace quoin::solver {

/// Exact solution on a grid that is a single panel, by elimination row by row: what the hierarchy
/// ends with. With V[j] the conductances between row j and the next, S[j] what is left of the rows
/// below and of row j itself,
///   S[j + 1] = A[j + 1] - V[j] S[j]^-1 V[j];
/// the inverse of each S[j] is kept. Always worked out in double.
template <typename T>
class PanelSolver {
 public:
  PanelSolver(const Conductances<T>& network, const Machine& machine, Arena& arena);

  Panels<T> rhs;
  Panels<T> x;

  /// x from rhs. Returns rhs . x.
  double solve();

 private:
  const LevelKernels<T>* kernels_;
  PanelLayout layout_;
  Rows rows_;
  Panels<T> north_;
  Panels<T> tie_;
  T* inverses_;  // lane_count * lane_count for each row
};

}  // namespace quoin::solver
