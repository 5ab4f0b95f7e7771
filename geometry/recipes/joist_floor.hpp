// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// A floor between two storeys that meets the outside wall, in a vertical cut along a joist or
/// through a slab: the joist bears in its pocket. Beside a joist the real wall is less disturbed.
struct JoistFloor {
  static constexpr std::string_view name = "floor";
  static constexpr std::string_view about =
      "a floor between storeys meeting the outside wall, in a vertical cut along a joist";
  static constexpr bool vertical = true;

  std::vector<Layer> layers;   ///< of the outside wall, behind any lining
  std::vector<Layer> lining;   ///< on its inside above and below the floor; may be empty
  double lining_gap = 0.0;     ///< how far the lining stops short of the floor, m
  std::optional<double> wall;  ///< above the floor and below the ceiling to the cut planes, m
  std::vector<Layer> boards;   ///< on the joist, from the top down; may be empty
  RegionId joist;
  double joist_depth = 0.2;      ///< its height, m
  double bearing = 0.1;          ///< how far it reaches into the wall, m
  RegionId pocket;               ///< what fills the pocket behind its end; not valid: the wall
  double pocket_depth = 0.02;    ///< m
  std::vector<Layer> ceiling;    ///< under the joist, from the top down; may be empty
  std::optional<double> length;  ///< of the floor, from the wall to the cut plane, m
  SpaceId below;                 ///< the air under the floor; not valid: the same as above
  SpaceId inside;
  SpaceId outside;
};

template <class Visitor>
void describe(Visitor& visit, JoistFloor& floor) {
  visit.layers(
      "layers", floor.layers,
      "of the outside wall, from the inside out, without a lining that stops at the floor");
  visit.optional_layers("lining", floor.lining,
                        "on the inside of that wall above and below, from its face inwards",
                        "[{material: wood fibre board, thickness: 40}]");
  visit.length("lining gap", floor.lining_gap, 0.0, 2.0,
               "how far it stops short of floor and ceiling");
  visit.length("wall length", floor.wall, 0.05, 20.0,
               "above the floor and below the ceiling; by default 1 m or three thicknesses of the "
               "wall beyond the gap");
  visit.optional_layers("boards", floor.boards, "on the joist, from the top down",
                        "[{material: softwood across the grain, thickness: 22}]");
  visit.material("joist", floor.joist, "softwood along the grain",
                 "the material of the joist, or of a slab");
  visit.length("joist depth", floor.joist_depth, 0.02, 1.0, "its height");
  visit.length("bearing", floor.bearing, 0.0, 2.0, "how far it reaches into the wall");
  visit.optional_material("pocket", floor.pocket, "lime mortar",
                          "what fills the pocket behind its end");
  visit.length("pocket depth", floor.pocket_depth, 0.001, 1.0, "from its end into the wall");
  visit.optional_layers("ceiling", floor.ceiling, "under the joist, from the top down");
  visit.length("floor length", floor.length, 0.05, 20.0,
               "from the wall to the cut plane; by default 1 m or three heights of the floor");
  visit.optional_space("below", floor.below, "kitchen",
                       "the space under the floor, where that is another air");
  visit.space("inside", floor.inside, "inside", "the space inside, above the floor");
  visit.space("outside", floor.outside, "outside", "the space outside");
}

/// Why a floor cannot be built as described; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to(const JoistFloor& floor);

/// The drawing of a floor, y up. The outside wall has its inside face, without the lining, on x = 0
/// and its outside at x = t; the top of the joist lies on y = 0.
[[nodiscard]] Drawing drawing_of(const JoistFloor& floor);

}  // namespace quoin::geometry
