// SPDX-License-Identifier: Apache-2.0
#include <algorithm>

#include "geometry/recipes/corner.hpp"

namespace quoin::geometry {

Drawing drawing_of(const Corner& corner) {
  Drawing drawing;
  const bool external = corner.turn == Turn::external;
  const double thickness = thickness_of(corner.layers);
  const double leg = corner.leg.value_or(cut_distance(thickness));
  const double end = thickness + leg;
  const SpaceId around = external ? corner.outside : corner.inside;
  const SpaceId within = external ? corner.inside : corner.outside;

  // Squares from the wrapping face towards the angle, each covering all but a strip of the one
  // before.
  drawing.sheet = {{around, rectangle(-space_margin, 0, -space_margin, end), {}},
                   {around, rectangle(0, end, -space_margin, 0), {}}};
  std::vector<Layer> inwards = corner.layers;
  if (external) std::reverse(inwards.begin(), inwards.end());
  double offset = 0.0;
  // Seen from outside what lies behind a layer lies in front of it.
  const auto draw_at = [&](MembraneId membrane) {
    draw(drawing.sheet, membrane, {{offset, end}, {offset, offset}, {end, offset}});
  };
  if (external && !inwards.empty()) draw_at(inwards.front().behind);
  for (std::size_t k = 0; k < inwards.size(); ++k) {
    drawing.sheet.push_back({inwards[k].region, rectangle(offset, end, offset, end), {}});
    offset += inwards[k].thickness;
    if (!external) draw_at(inwards[k].behind);
    if (external && k + 1 < inwards.size()) draw_at(inwards[k + 1].behind);
  }
  drawing.sheet.push_back({within, rectangle(thickness, end, thickness, end), {}});

  const double shorter = 2 * leg;  // both legs, along the face of the angle
  const double longer = 2 * end;   // both legs, along the wrapping face
  drawing.flanks = {{.name = "wall",
                     .layers = corner.layers,
                     .inside = corner.inside,
                     .outside = corner.outside,
                     .internal = external ? shorter : longer,
                     .overall_internal = external ? shorter : longer,
                     .external = external ? longer : shorter}};
  drawing.thickness = thickness;
  const Point angle = external ? Point{thickness, thickness} : Point{0, 0};
  drawing.places = {{"the angle of the corner", angle, angle},
                    {"the wall beside the corner", angle, {angle.x, end}},
                    {"the wall beside the corner", angle, {end, angle.y}}};
  return drawing;
}

}  // namespace quoin::geometry
