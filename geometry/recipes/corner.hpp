// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// Which way a wall turns.
enum class Turn {
  external,  ///< the quoin: the outside wraps around the corner
  internal,  ///< the room wraps around the corner
};

/// A wall of equal legs turning through a right angle, in plan.
struct Corner {
  static constexpr std::string_view name = "corner";
  static constexpr std::string_view about = "a wall turning a right angle, in plan";

  std::vector<Layer> layers;
  Turn turn = Turn::external;
  std::optional<double> leg;  ///< m; as long as a cut plane must be away where not given
  SpaceId inside;
  SpaceId outside;
};

template <class Visitor>
void describe(Visitor& visit, Corner& corner) {
  visit.layers("layers", corner.layers, "from the inside out");
  visit.choice("turn", corner.turn, {{"external", Turn::external}, {"internal", Turn::internal}},
               "external: the outside wraps around it; internal: the room does");
  visit.length(
      "leg", corner.leg, 0.05, 20.0,
      "each leg, from the corner of its shorter face to the cut plane; by default 1 m or three "
      "thicknesses of the wall");
  visit.space("inside", corner.inside, "inside", "the space inside");
  visit.space("outside", corner.outside, "outside", "the space outside");
}

/// The drawing of a corner. The outside face of an external corner lies on x = 0 and y = 0 with the
/// wall above and to the right; an internal corner has its inside face there. So the angle of the
/// shorter face is at (t, t), t the thickness of the wall, and the cuts at t + leg.
[[nodiscard]] Drawing drawing_of(const Corner& corner);

}  // namespace quoin::geometry
