// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "geometry/triangles/nodes.hpp"
#include "solver/scheme/physics.hpp"

namespace quoin::solver {

/// Where a thermometer lies on a surface.
struct Window {
  geometry::Point from;
  geometry::Point to;
  geometry::Point middle;
  double mean = 0.0;    ///< of the temperature, as found
  double length = 0.0;  ///< m; less than a thermometer's where the surface is shorter
};

/// Borders joined end to end along one air, all fabric or all not, walked with the material on the
/// left.
struct Run {
  std::vector<std::uint32_t> borders;
  std::vector<double> along;  ///< distance of each end from the start, m. Shape: borders + 1
  bool is_fabric = true;
};

/// The runs along an air; closed ones begin where it is warmest.
[[nodiscard]] std::vector<Run> runs_along(const geometry::NodedTriangles& nodes,
                                          const Physics& physics, SpaceId air,
                                          const std::vector<double>& warmth);

/// The temperature along a surface, all fabric or all not, walked with the material on the left:
/// quadratic on each piece. Shape: along and places have one more value than warmth
struct WarmthAlong {
  bool is_fabric = true;
  std::vector<double> along;  ///< distance of each end from the start, m
  std::vector<geometry::Point> places;
  std::vector<std::array<double, 3>> warmth;  ///< at start, middle and end of each piece
};

/// The coldest window on the fabric, or on any surface of the air where it has none: by sliding,
/// with either end at the end of a piece. None where there is no course.
[[nodiscard]] std::optional<Window> coldest_window(const std::vector<WarmthAlong>& courses);

/// The same along the runs of an air.
[[nodiscard]] std::optional<Window> coldest_window(const geometry::NodedTriangles& nodes,
                                                   const std::vector<Run>& runs,
                                                   const std::vector<double>& warmth);

/// The borders that make up a window; none unless borders end at both its ends.
[[nodiscard]] std::vector<std::uint32_t> borders_of(const geometry::NodedTriangles& nodes,
                                                    const std::vector<Run>& runs,
                                                    const Window& window);

}  // namespace quoin::solver
