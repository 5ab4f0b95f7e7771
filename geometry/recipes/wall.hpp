// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>
#include <vector>

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// A plain wall: layers side by side, the inside face on x = 0, the outside to the right.
struct Wall {
  static constexpr std::string_view name = "wall";
  static constexpr std::string_view about = "a plain wall of layers, away from any corner";

  std::vector<Layer> layers;
  double height = 1.0;  ///< m
  SpaceId inside;
  SpaceId outside;
};

template <class Visitor>
void describe(Visitor& visit, Wall& wall) {
  visit.layers("layers", wall.layers, "from the inside out");
  visit.length("height", wall.height, 0.01, 20.0, "how much of the wall is modelled");
  visit.space("inside", wall.inside, "inside", "the space inside");
  visit.space("outside", wall.outside, "outside", "the space outside");
}

/// The drawing of a wall, inside face on x = 0, y from 0 to the height.
[[nodiscard]] Drawing drawing_of(const Wall& wall);

}  // namespace quoin::geometry
