// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

#include "geometry/triangles/triangles.hpp"

namespace quoin::geometry {

/// How large triangles may be in the place of one triangle.
struct WantedArea {
  double area = 0.0;  ///< m2
  /// A corner at which the field is not smooth: triangles nearer to it than `size` are wanted
  /// smaller by (distance / size)^(14/9). Size 0: there is none.
  Point corner;
  double size = 0.0;  ///< m
};

/// How large triangles may be everywhere, told by an older triangulation.
struct AreaMap {
  Triangulation net;
  std::vector<WantedArea> wanted;  ///< Shape: triangles of the net
};

/// Triangles of material below this area, m2, are not cut.
inline constexpr double smallest_area = 1e-17;

/// Cuts material into triangles no larger than wanted, and fixed sides that a triangle sees under
/// more than 120 degrees, so that no triangle lies flat upon one. There is no least angle: thin
/// layers stay cheap. Stops at `most_points`; whether it came to its end. Source: insertion of
/// circumcentres after Ruppert (Journal of Algorithms 18, 1995; memory).
bool refine(Triangles& triangles, const AreaMap& map, std::size_t most_points);

/// The same area wanted everywhere.
[[nodiscard]] AreaMap even_areas(const Triangles& triangles, double area);

/// Cuts triangles so that a place is a corner of some. Returns its number.
std::uint32_t corner_at(Triangles& triangles, Point place);

}  // namespace quoin::geometry
