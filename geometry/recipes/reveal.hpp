// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/recipes/closer.hpp"
#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {

/// A window jamb in plan: the wall, its reveal, and the frame set into it.
struct Reveal {
  static constexpr std::string_view name = "reveal";
  static constexpr std::string_view about = "a window jamb in plan: wall, reveal and frame";

  std::vector<Layer> layers;   ///< of the wall
  std::vector<Layer> lining;   ///< returned into the reveal up to the frame; may be empty
  RegionId closer;             ///< closes the cavities of the wall at the opening; not valid: none
  double closer_depth = 0.1;   ///< from the opening into the wall, m
  std::optional<double> wall;  ///< from the structural opening to the cut plane, m
  RegionId frame;
  double frame_depth = 0.07;   ///< through the wall, m
  double frame_width = 0.1;    ///< seen from the structural opening to the cut plane, m
  double frame_setback = 0.1;  ///< from the outside face of the wall to that of the frame, m
  double splay = 0.0;  ///< how much further the wall is cut back at the room than at the frame, m
  SpaceId inside;
  SpaceId outside;
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
  visit.frame("frame", reveal.frame, "the material of the frame");
  visit.length("frame depth", reveal.frame_depth, 0.005, 1.0, "through the wall");
  visit.length("frame width", reveal.frame_width, 0.01, 3.0,
               "from the structural opening to the cut plane");
  visit.length("frame setback", reveal.frame_setback, 0.0, 2.0,
               "from the outside face of the wall to that of the frame");
  visit.length("splay", reveal.splay, 0.0, 1.0,
               "how much further the wall is cut back at the room than at the frame");
  visit.space("inside", reveal.inside, "inside", "the space inside");
  visit.space("outside", reveal.outside, "outside", "the space outside");
}

/// Why a reveal cannot be built as described; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to(const Reveal& reveal);

/// The drawing of a reveal. The inside face of the wall lies on y = 0, the outside at y = -t; the
/// structural opening begins at x = 0, the wall at x < 0, the frame at x > 0.
[[nodiscard]] Drawing drawing_of(const Reveal& reveal);

}  // namespace quoin::geometry
