// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstddef>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// The four cells that meet at one point of the section's grid, once round: SW, SE, NE, NW.
using Quarters = std::array<Cell, 4>;

/// The cells about the crossing x[i], y[j]; nothing beyond the section.
[[nodiscard]] Quarters quarters(const Section& section, std::size_t i, std::size_t j);

/// The fans of material about a point. Material that shares an edge is one fan, so heat passes
/// within each and, as a point has no capacity, none from one to another.
struct Fans {
  std::array<std::size_t, 8> fan{};  ///< number from 1 of each eighth of the turn from the east on,
                                     ///< 0 where there is no material
  std::vector<std::size_t> eighths;  ///< how many are in each fan

  explicit Fans(const Quarters& cells);
};

}  // namespace quoin::geometry
