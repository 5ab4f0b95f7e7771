// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/sill.hpp"

namespace quoin::geometry {
namespace {

constexpr EdgeWords words{"ledge", "board", "the board", "the edge of the board",
                          "the wall below the window"};

}  // namespace

Drawing drawing_of(const Sill& sill) {
  Drawing drawing;
  paint_wall(drawing.sheet, sill, Edge::foot, sill.sill_projection);
  const double thickness = thickness_of(sill.layers);
  const double frame = frame_of(sill).outside, nose = thickness + sill.sill_projection;
  const SubFrameAt sub = placed(sill.sub_frame, frame_of(sill), thickness);
  if (sub.faces.outside < frame) {  // under the frame as far as the sub-frame
    drawing.sheet.push_back({sill.sill, rectangle(sub.faces.outside, frame, 0, sub.width), {}});
  }
  drawing.sheet.push_back({sill.sill,
                           {{frame, 0},
                            {nose, 0},
                            {nose, sill.sill_thickness - sill.sill_fall},
                            {frame, sill.sill_thickness}},
                           {}});
  set_window(drawing, sill, Edge::foot, words);
  return drawing;
}

std::optional<std::string> objection_to(const Sill& sill) {
  if (sill.sill_thickness > light_of(sill) - snap_tolerance) {
    return "the sill covers the whole frame";
  }
  if (sill.sill_fall > sill.sill_thickness - 0.001) {
    return "the sill falls by more than its thickness";
  }
  if (sill.frame_setback + sill.sill_projection < 0.001) {
    return "the sill has no depth: the frame is flush with the outside and nothing projects";
  }
  return objection_to_window(sill, words);
}

}  // namespace quoin::geometry
