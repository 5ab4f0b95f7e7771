// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/head.hpp"

#include <algorithm>

namespace quoin::geometry {
namespace {

constexpr EdgeWords words{"soffit", "lining", "the soffit", "the edge of the soffit",
                          "the wall above the window"};

/// How high a splay has risen at a depth below the inside face of the wall, m.
double rise_at(const Head& head, double depth) {
  const double foot =
      placed(head.sub_frame, frame_of(head), thickness_of(head.layers)).faces.inside;
  return depth >= foot ? 0.0 : head.splay * (foot - std::max(0.0, depth)) / foot;
}

}  // namespace

Drawing drawing_of(const Head& head) {
  Drawing drawing;
  paint_wall(drawing.sheet, head, Edge::top);
  const double thickness = thickness_of(head.layers);
  const double lintel_outside = thickness - head.lintel_setback;
  drawing.sheet.push_back(
      {head.lintel,
       rectangle(lintel_outside - head.lintel_depth, lintel_outside, 0, head.lintel_height),
       {}});
  if (head.outer_lintel.valid()) {
    drawing.sheet.push_back(
        {head.outer_lintel, rectangle(lintel_outside, thickness, 0, head.outer_height), {}});
  }
  set_window(drawing, head, Edge::top, words, head.outer_lintel);
  return drawing;
}

std::optional<std::string> objection_to(const Head& head) {
  const double thickness = thickness_of(head.layers);
  const double wall = head.wall.value_or(cut_distance(thickness));
  if (auto objection = objection_to_window(head, words)) return objection;
  const double lintel_inside = thickness - head.lintel_setback - head.lintel_depth;
  if (lintel_inside < -snap_tolerance) {
    return "the lintel stands into the room: its setback and depth together exceed the thickness "
           "of the wall";
  }
  if (head.outer_lintel.valid() && head.lintel_setback < snap_tolerance) {
    return "an outer lintel needs room in front of the lintel: set the lintel back";
  }
  if (head.lintel_height > wall - snap_tolerance ||
      (head.outer_lintel.valid() && head.outer_height > wall - snap_tolerance)) {
    return "the lintel is as high as the wall above it: make the wall longer";
  }
  if (rise_at(head, lintel_inside) > head.lintel_height - snap_tolerance) {
    return "the splay cuts through the lintel: make the lintel higher, or set it further out";
  }
  if (head.rebate > 0 && head.lintel_setback < head.frame_setback - snap_tolerance) {
    return "the rebate would hang from the lintel: set the lintel back as far as the frame";
  }
  return std::nullopt;
}

}  // namespace quoin::geometry
