// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

#include "geometry/cell.hpp"
#include "geometry/triangles/triangulation.hpp"

namespace quoin::geometry {

/// A sheet in triangles: every edge of every patch between different fills along fixed sides,
/// whatever its slope.
struct Triangles {
  Triangulation net;
  std::vector<Fill> fills;  ///< of each part of the net; of the first, the surroundings, nothing

  [[nodiscard]] const Fill& fill(std::uint32_t triangle) const {
    return fills[net.triangles()[triangle].part];
  }
  [[nodiscard]] bool is_solid(std::uint32_t triangle) const {
    return geometry::is_solid(fill(triangle));
  }
};

/// The coarsest triangles that show a sheet, with nodes at some places. Membranes, which fill no
/// place, are left out. Throws: std::runtime_error where the outlines cannot be disentangled.
[[nodiscard]] Triangles triangles_of(const Sheet& sheet, const std::vector<Point>& places = {});

/// Area of all material, m2.
[[nodiscard]] double solid_area(const Triangles& triangles);

}  // namespace quoin::geometry
