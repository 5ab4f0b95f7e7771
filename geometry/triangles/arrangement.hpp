// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <vector>

#include "geometry/sheet.hpp"

namespace quoin::geometry {

/// Points of a drawing nearer than this are one, m. As fine as coordinates are written.
inline constexpr double same_point = 1e-5;
/// An edge is cut at points nearer than this, m: what rounding both ends of an edge and a point
/// beside it to 0.01 mm can part.
inline constexpr double on_edge = 1.5e-5;

/// The edges of a drawing cut at each other: they meet in end points only, no two are the same, and
/// no point lies within `on_edge` of an edge that does not end in it.
struct Arrangement {
  std::vector<Point> points;  ///< on the raster given
  std::vector<std::array<std::uint32_t, 2>> edges;
};

class Raster;

/// The arrangement of closed outlines, with further places as points. Where a place lies on an edge
/// it cuts it. Throws: std::runtime_error where cutting finds no end.
[[nodiscard]] Arrangement arrangement_of(const std::vector<Outline>& outlines,
                                         const std::vector<Point>& places, const Raster& raster);

}  // namespace quoin::geometry
