// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings/findings.hpp"

namespace quoin::solver {

/// Where heat flows: between two lines of equal value flows the difference of their values.
struct Stream {
  /// The stream function at each node, W/m: heat flows with the higher values on its left. The
  /// lowest of each connected piece of material is 0, and so are nodes outside the material.
  /// Shape: nodes.
  std::vector<double> value;
  /// Round a hollow into which more heat flows than out of it the values come back higher or lower.
  /// There the material is cut, along a row of cells; lines must not be drawn in these. Shape:
  /// cells; empty: no cut.
  std::vector<char> is_cut;
};

/// The stream function of a solution, all 0 where it holds no cells, at these temperatures of the
/// spaces. It belongs to the control volumes on the cells, which balance to rounding: what flows
/// between any two nodes is exactly the difference of their values, and the flow of all is the
/// lower bound. Sign: (q_x, q_y) = (d/dy, -d/dx) of it.
[[nodiscard]] Stream stream_of(const Solution& solution, const SpaceTemperatures& spaces);

}  // namespace quoin::solver
