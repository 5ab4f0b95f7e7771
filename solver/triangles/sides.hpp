// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>

#include "geometry/triangles/triangulation.hpp"

namespace quoin::solver {

/// A number of a corner or side as an index.
[[nodiscard]] constexpr std::size_t at(int k) { return static_cast<std::size_t>(k); }

/// The three nodes of a side among the six of its element: first, middle, last.
[[nodiscard]] constexpr std::array<std::size_t, 3> on_side(int k) {
  return {at(geometry::next(k)), at(k) + 3, at(geometry::before(k))};
}

}  // namespace quoin::solver
