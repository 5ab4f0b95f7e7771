// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/surface.hpp"

namespace quoin::solver {

/// A local minimum of temperature along a developed surface.
struct LocalMinimum {
  std::size_t surface = 0;   ///< index among the surfaces given
  std::size_t position = 0;  ///< index of the node along it
  std::size_t face = 0;      ///< a face that meets the node: a wall's rather than a frame's
  double dip = 0.0;  ///< how much lower a parabola through it and its neighbours goes on a straight
                     ///< surface of one material, K
  double thermometer = 0.0;  ///< lowest mean over 10 mm of wall (or frame) that include it, degC
};

/// What a thermometer held to the wall averages over, m. Common practice, no source.
inline constexpr double thermometer_width = 0.010;

/// All local minima along the given surfaces. Dips shallower than `prominence` (K) are left out,
/// except the lowest point of each surface. Ends of a surface count: an open wall may be the
/// coldest place. So does the edge of the fabric where a frame or glazing goes on colder: it is the
/// coldest place of the fabric there. The seam of a closed surface is no end.
[[nodiscard]] std::vector<LocalMinimum> local_minima(
    const std::vector<geometry::Surface>& surfaces, const std::vector<double>& temperature,
    const geometry::Per<geometry::RegionId, char>& is_fabric, double prominence);

}  // namespace quoin::solver
