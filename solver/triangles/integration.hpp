// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>

#include "geometry/triangles/triangulation.hpp"
#include "solver/triangles/sides.hpp"

namespace quoin::solver {

/// Gauss's points on a side from 0 to 1, exact to the fifth degree. They are literal, for
/// the board's compiler, against the standard, starts one inline variable before another it needs.
inline constexpr double gauss_reach = 0.38729833462074168852;  // sqrt(0.6) / 2
inline constexpr double gauss_place[3] = {0.5 - gauss_reach, 0.5, 0.5 + gauss_reach};
inline constexpr double gauss_weight[3] = {5. / 18, 8. / 18, 5. / 18};

/// The gradient of a quadratic field at the middle of side k.
[[nodiscard]] inline geometry::Point gradient_at(const std::array<geometry::Point, 3>& g,
                                                 const std::array<double, 6>& values, int k) {
  // Shares of the corners there: 0 of corner k, 1/2 of both others.
  const std::size_t a = at(geometry::next(k)), b = at(geometry::before(k)), c = at(k);
  const double of_a = values[a] + 2 * values[c + 3], of_b = values[b] + 2 * values[c + 3];
  const double of_c = -values[c] + 2 * values[b + 3] + 2 * values[a + 3];
  return {of_a * g[a].x + of_b * g[b].x + of_c * g[c].x,
          of_a * g[a].y + of_b * g[b].y + of_c * g[c].y};
}

/// The slopes of the shapes of first, middle and last node along a side of length 1.
[[nodiscard]] inline std::array<double, 3> slopes_at(double s) {
  return {4 * s - 3, 4 - 8 * s, 4 * s - 1};
}

}  // namespace quoin::solver
