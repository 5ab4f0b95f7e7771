// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <variant>
#include <vector>

#include "geometry/ids.hpp"

namespace quoin::geometry {

/// A place on the sheet, m. In a vertical cut y points up; in a plan cut both lie in the plan.
struct Point {
  double x = 0.0;
  double y = 0.0;
  auto operator<=>(const Point&) const = default;
};

/// What a place on the sheet shows: nothing, a material in some state, or a space. A membrane fills
/// no place: it is drawn as a line.
using Fill = std::variant<std::monostate, RegionId, SpaceId, MembraneId>;

/// A closed line, its last corner joined to its first. Either way round, not crossing itself.
using Outline = std::vector<Point>;

/// The outline of a rectangle. x0 < x1, y0 < y1.
[[nodiscard]] Outline rectangle(double x0, double x1, double y0, double y1);

/// One painted area, or the line of a membrane.
struct Patch {
  Fill fill;
  Outline outline;  ///< of a membrane its line from end to end, along x and y
  std::optional<RegionId>
      only_over;  ///< paints only where the sheet shows this region (a damp band)
};

/// The membrane that a patch draws; null where it paints an area.
[[nodiscard]] inline const MembraneId* membrane_of(const Patch& patch) {
  return std::get_if<MembraneId>(&patch.fill);
}

/// A drawing: patches in painting order, later ones cover earlier ones. A membrane is covered by
/// areas painted later over both its sides.
using Sheet = std::vector<Patch>;

}  // namespace quoin::geometry
