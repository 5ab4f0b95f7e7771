// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "geometry/recipes/window_edge.hpp"

namespace quoin::geometry {

/// The foot of a window in a vertical cut: the wall below, a sloped sill outside, a board inside
/// (the lining), and the frame standing on the wall.
struct Sill : WindowEdge {
  static constexpr std::string_view name = "sill";
  static constexpr std::string_view about =
      "the foot of a window in a vertical cut: wall, sill, board and frame";
  static constexpr bool vertical = true;

  RegionId sill;
  double sill_thickness = 0.05;   ///< at the frame, m
  double sill_fall = 0.02;        ///< how much lower its top is at the outer edge, m
  double sill_projection = 0.04;  ///< beyond the outside face of the wall, m
};

template <class Visitor>
void describe(Visitor& visit, Sill& sill) {
  visit.layers("layers", sill.layers, "of the wall, from the inside out");
  visit.optional_layers("board", sill.lining,
                        "on the wall between room and frame, from its top down");
  describe_closer(visit, sill.closer, sill.closer_depth);
  visit.length("wall length", sill.wall, 0.05, 20.0,
               "from the structural opening down to the cut plane; by default 1 m or three "
               "thicknesses of the wall");
  describe_frame(visit, sill, "frame height");
  visit.length("splay", sill.splay, 0.0, 1.0,
               "how much lower the wall is cut at the room than at the frame");
  visit.material("sill", sill.sill, "hard limestone", "the material of the sill outside");
  visit.length("sill thickness", sill.sill_thickness, 0.002, 0.5, "at the frame");
  visit.length("sill fall", sill.sill_fall, 0.0, 0.3,
               "how much lower its top is at the outer edge");
  visit.length("sill projection", sill.sill_projection, 0.0, 0.5,
               "beyond the outside face of the wall");
  visit.space("inside", sill.inside, "inside", "the space inside");
  visit.space("outside", sill.outside, "outside", "the space outside");
}

/// Why a sill cannot be built as described; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to(const Sill& sill);

/// The drawing of a sill, y up. The inside face of the wall lies on x = 0, the outside at x = t;
/// the structural opening begins at y = 0, the wall below, the frame above.
[[nodiscard]] Drawing drawing_of(const Sill& sill);

}  // namespace quoin::geometry
