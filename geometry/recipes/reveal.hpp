// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "geometry/recipes/window_edge.hpp"

namespace quoin::geometry {

/// A window jamb in plan: the wall, its reveal, and the frame set into it.
struct Reveal : WindowEdge {
  static constexpr std::string_view name = "reveal";
  static constexpr std::string_view about = "a window jamb in plan: wall, reveal and frame";
};

template <class Visitor>
void describe(Visitor& visit, Reveal& reveal) {
  visit.layers("layers", reveal.layers, "of the wall, from the inside out");
  visit.optional_layers("lining", reveal.lining,
                        "on the reveal between room and frame, from its face inwards");
  describe_closer(visit, reveal.closer, reveal.closer_depth);
  visit.length(
      "wall length", reveal.wall, 0.05, 20.0,
      "from the structural opening to the cut plane; by default 1 m or three thicknesses of "
      "the wall");
  describe_frame(visit, reveal, "frame width");
  visit.length("splay", reveal.splay, 0.0, 1.0,
               "how much further the wall is cut back at the room than at the frame");
  visit.length("rebate", reveal.rebate, 0.0, 0.5,
               "how far the masonry outside covers the frame behind it; 0: not at all");
  visit.space("inside", reveal.inside, "inside", "the space inside");
  visit.space("outside", reveal.outside, "outside", "the space outside");
}

/// Why a reveal cannot be built as described; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to(const Reveal& reveal);

/// The drawing of a reveal. The inside face of the wall lies on y = 0, the outside at y = -t; the
/// structural opening begins at x = 0, the wall at x < 0, the frame at x > 0.
[[nodiscard]] Drawing drawing_of(const Reveal& reveal);

}  // namespace quoin::geometry
