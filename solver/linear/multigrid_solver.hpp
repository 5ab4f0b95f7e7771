// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>

#include "solver/linear/linear.hpp"

namespace quoin::solver {

/// Conjugate gradients preconditioned by semicoarsening multigrid, in single precision as long as
/// that helps, else in double; where even that fails, the direct method. Columns to be relaxed run
/// along the shorter side of the grid.
[[nodiscard]] std::unique_ptr<LinearSolver> multigrid_solver(const FivePointOperator& network,
                                                             const LinearOptions& options);

}  // namespace quoin::solver
