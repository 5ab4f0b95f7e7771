// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/sub_frame.hpp"

#include "geometry/recipes/drawing.hpp"

namespace quoin::geometry {
namespace {

constexpr double usual_width = 0.03;  // m. Common practice, no source

}  // namespace

SubFrameAt placed(const SubFrame& sub, const InDepth& frame, double wall_thickness) {
  if (!sub.region.valid()) return {0.0, frame};
  const double outside = sub.setback ? wall_thickness - *sub.setback : frame.outside;
  const double depth = sub.depth.value_or(frame.outside - frame.inside);
  return {sub.width.value_or(usual_width), {outside - depth, outside}};
}

std::optional<std::string> objection_to_sub_frame(const SubFrame& sub, const InDepth& frame,
                                                  double wall_thickness) {
  if (!sub.region.valid()) {
    if (!sub.width && !sub.depth && !sub.setback) return std::nullopt;
    return "a sub-frame has measures, but no material: `sub-frame: softwood across the grain`";
  }
  const InDepth faces = placed(sub, frame, wall_thickness).faces;
  if (faces.inside < -snap_tolerance) {
    return "the sub-frame stands into the room: its setback and depth together exceed the "
           "thickness of the wall";
  }
  if (faces.inside > frame.outside - snap_tolerance ||
      frame.inside > faces.outside - snap_tolerance) {
    return "the frame does not stand in the sub-frame: one lies wholly in front of the other, so "
           "nothing closes the gap";
  }
  return std::nullopt;
}

}  // namespace quoin::geometry
