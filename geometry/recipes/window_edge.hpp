// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "geometry/recipes/closer.hpp"
#include "geometry/recipes/drawing.hpp"
#include "geometry/recipes/sub_frame.hpp"

namespace quoin::geometry {

/// Where a wall ends at a window and the frame stands: what jamb, sill and head have in common.
/// Along the wall lengths are told from the structural opening, through it from a face.
struct WindowEdge {
  std::vector<Layer> layers;   ///< of the wall
  std::vector<Layer> lining;   ///< on the wall between room and frame, from its face inwards
  std::optional<double> wall;  ///< from the structural opening to the cut plane, m
  RegionId closer;             ///< closes the cavities of the wall at the opening; not valid: none
  double closer_depth = 0.1;   ///< from the opening into the wall, m
  RegionId frame;
  double frame_depth = 0.07;   ///< through the wall, m
  double frame_seen = 0.1;     ///< from structural opening or sub-frame to the cut plane, m
  double frame_setback = 0.1;  ///< from the outside face of the wall to that of the frame, m
  SubFrame sub_frame;
  double splay = 0.0;   ///< how much further the wall is cut back at the room than at the frame, m
  double rebate = 0.0;  ///< how far the masonry outside covers what stands behind it, m
  SpaceId inside;
  SpaceId outside;
};

/// The inputs of the frame and of what holds it. `seen`: what the length of frame that is modelled
/// is called.
template <class Visitor>
void describe_frame(Visitor& visit, WindowEdge& window, std::string_view seen) {
  visit.frame("frame", window.frame, "the material of the frame");
  visit.length("frame depth", window.frame_depth, 0.005, 1.0, "through the wall");
  visit.length(seen, window.frame_seen, 0.01, 3.0,
               "from the structural opening, or the sub-frame, to the cut plane");
  visit.length("frame setback", window.frame_setback, 0.0, 2.0,
               "from the outside face of the wall to that of the frame");
  describe_sub_frame(visit, window.sub_frame);
}

/// Which edge of the window, and how it lies on the sheet: a jamb in plan, room above, wall on the
/// left; the others in a vertical cut, room on the left.
enum class Edge { jamb, foot, top };

/// What the trade calls the parts of an edge.
struct EdgeWords {
  std::string_view face;   ///< between room and frame: "reveal"
  std::string_view cover;  ///< what lies on it: "lining"
  std::string_view place;  ///< of that face: "the reveal"
  std::string_view arris;  ///< "the arris of the reveal"
  std::string_view wall;   ///< "the wall beside the window"
};

/// The outline between two places along the wall, from the structural opening into the light, and
/// two depths below the inside face of the wall, m.
[[nodiscard]] Outline block(Edge edge, double from, double to, double inside, double outside);

/// How deep the frame stands below the inside face of the wall.
[[nodiscard]] InDepth frame_of(const WindowEdge& window);

/// From the structural opening to the cut plane through the frame, m.
[[nodiscard]] double light_of(const WindowEdge& window);

/// Paints both airs and the wall up to the opening. `beyond`: how far something projects from the
/// outside face, m.
void paint_wall(Sheet& sheet, const WindowEdge& window, Edge edge, double beyond = 0.0);

/// Paints what stands in the opening over a wall: splay, lining, rebate, sub-frame and frame; and
/// tells flanks and places. `rebate`: its material where that is not the wall's.
void set_window(Drawing& drawing, const WindowEdge& window, Edge edge, const EdgeWords& words,
                RegionId rebate = {});

/// Why a window cannot be set into its wall; nothing where it can.
[[nodiscard]] std::optional<std::string> objection_to_window(const WindowEdge& window,
                                                             const EdgeWords& words);

}  // namespace quoin::geometry
