// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "geometry/recipes/window_edge.hpp"

namespace quoin::geometry {

/// The top of a window in a vertical cut: the wall above on its lintel, and the frame under it. The
/// lining lies on the soffit.
struct Head : WindowEdge {
  static constexpr std::string_view name = "head";
  static constexpr std::string_view about =
      "the top of a window in a vertical cut: wall, lintel, soffit and frame";
  static constexpr bool vertical = true;

  RegionId lintel;
  double lintel_height = 0.2;    ///< m
  double lintel_depth = 0.2;     ///< through the wall, m
  double lintel_setback = 0.11;  ///< from the outside face of the wall to the lintel, m
  RegionId outer_lintel;         ///< in front of the lintel; not valid: none
  double outer_height = 0.2;     ///< of the outer lintel, m
};

template <class Visitor>
void describe(Visitor& visit, Head& head) {
  visit.layers("layers", head.layers, "of the wall, from the inside out");
  visit.length("wall length", head.wall, 0.05, 20.0,
               "from the structural opening up to the cut plane; by default 1 m or three "
               "thicknesses of the wall");
  visit.material("lintel", head.lintel, "reinforced concrete", "the material of the lintel");
  visit.length("lintel height", head.lintel_height, 0.001, 1.0, "up from the structural opening");
  visit.length("lintel depth", head.lintel_depth, 0.001, 2.0, "through the wall");
  visit.length("lintel setback", head.lintel_setback, 0.0, 2.0,
               "from the outside face of the wall to the lintel");
  visit.optional_material("outer lintel", head.outer_lintel, "hard limestone",
                          "a second one, from the outside face to the lintel");
  visit.length("outer lintel height", head.outer_height, 0.001, 1.0,
               "up from the structural opening");
  visit.optional_layers("lining", head.lining,
                        "on the soffit between room and frame, from its face up");
  describe_closer(visit, head.closer, head.closer_depth);
  describe_frame(visit, head, "frame height");
  visit.length("splay", head.splay, 0.0, 1.0,
               "how much higher the soffit is at the room than at the frame");
  visit.length("rebate", head.rebate, 0.0, 0.5,
               "how far wall or outer lintel hang down before the frame; 0: not at all");
  visit.space("inside", head.inside, "inside", "the space inside");
  visit.space("outside", head.outside, "outside", "the space outside");
}

/// Why a head cannot be built as described; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to(const Head& head);

/// The drawing of a head, y up. The inside face of the wall lies on x = 0, the outside at x = t;
/// the structural opening ends at y = 0, the wall above, the frame below.
[[nodiscard]] Drawing drawing_of(const Head& head);

}  // namespace quoin::geometry
