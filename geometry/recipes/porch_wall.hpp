// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// The wall of a house, partly in the open and partly behind a porch whose flank wall meets it, in
/// plan.
struct PorchWall {
  static constexpr std::string_view name = "porch wall";
  static constexpr std::string_view about =
      "an outside wall that an unheated porch is built against, in plan";

  std::vector<Layer> layers;     ///< of the house wall
  std::optional<double> wall;    ///< of the house wall on either side of the flank wall, m
  std::vector<Layer> flank;      ///< of the porch, from the open to the porch
  std::optional<double> length;  ///< of the flank wall, from the house to the cut plane, m
  SpaceId inside;
  SpaceId porch;
  SpaceId outside;
};

template <class Visitor>
void describe(Visitor& visit, PorchWall& wall) {
  visit.layers("layers", wall.layers, "of the house wall, from the inside out");
  visit.length(
      "wall length", wall.wall, 0.05, 20.0,
      "of the house wall on either side of the porch's flank wall; by default 1 m or three "
      "thicknesses");
  visit.layers("flank wall", wall.flank, "of the porch, from the open to the porch",
               "[{material: wall brick, thickness: 102}]");
  visit.length("flank length", wall.length, 0.05, 20.0,
               "from the house to the cut plane; by default 1 m or three of its thicknesses");
  visit.space("inside", wall.inside, "inside", "the space inside");
  visit.space("porch", wall.porch, "unheated", "the unheated space");
  visit.space("outside", wall.outside, "outside", "the space outside");
}

/// The drawing of a porch wall. The inside face of the house wall lies on y = 0, its outside at
/// y = -t; the flank wall begins at x = 0, with the open on its left and the porch on its right.
[[nodiscard]] Drawing drawing_of(const PorchWall& wall);

}  // namespace quoin::geometry
