// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// A corner of a bay: a wall of equal legs turning by any angle, in plan. It is its own mirror
/// image about the plane that halves the angle, where no heat crosses: so one half is drawn, cut
/// along that plane, and every angle is followed to 0.01 mm.
struct BayCorner {
  static constexpr std::string_view name = "bay corner";
  static constexpr std::string_view about =
      "a wall turning by any angle, in plan; half of it, cut through the angle";

  std::vector<Layer> layers;
  double angle = 135.0;       ///< degrees between the inside faces; above 180 the room wraps around
  std::optional<double> leg;  ///< from the corner of its shorter face to the cut plane, m
  SpaceId inside;
  SpaceId outside;
};

template <class Visitor>
void describe(Visitor& visit, BayCorner& corner) {
  visit.layers("layers", corner.layers, "from the inside out");
  visit.number("angle", corner.angle, 45.0, 315.0,
               "degrees between the inside faces; above 180 the room wraps around the corner");
  visit.length("leg", corner.leg, 0.05, 20.0,
               "from the corner of the shorter face to the cut plane; by default 1 m or three "
               "thicknesses of the wall");
  visit.space("inside", corner.inside, "inside", "the space inside");
  visit.space("outside", corner.outside, "outside", "the space outside");
}

/// The drawing of one half of a bay corner. The inside face of its leg lies on y = 0, the outside
/// at y = -t; the cut through the angle passes through the origin.
[[nodiscard]] Drawing drawing_of(const BayCorner& corner);

}  // namespace quoin::geometry
