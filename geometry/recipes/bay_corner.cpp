// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/bay_corner.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

#include "geometry/section.hpp"

namespace quoin::geometry {

Drawing drawing_of(const BayCorner& corner) {
  Drawing drawing;
  const double thickness = thickness_of(corner.layers);
  // How far the cut goes back along the wall for each metre into it. Beyond 180 degrees forwards.
  const double half_angle = corner.angle / 2 * std::numbers::pi / 180;
  const double back = std::cos(half_angle) / std::sin(half_angle);
  // On the raster of sections, so that a section drawn larger is the same section.
  const auto cut_at = [&](double depth) { return -std::round(depth * back / snap) * snap; };
  const double shorter = std::max(0.0, cut_at(thickness));
  const double end = shorter + corner.leg.value_or(cut_distance(thickness));

  drawing.sheet = {{corner.inside, rectangle(0, end, 0, space_margin), {}},
                   {corner.outside,
                    rectangle(cut_at(thickness), end, -thickness - space_margin, -thickness),
                    {}}};
  double depth = 0.0;
  for (const Layer& layer : corner.layers) {
    const double far = depth + layer.thickness;
    drawing.sheet.push_back(
        {layer.region,
         {{cut_at(far), -far}, {end, -far}, {end, -depth}, {cut_at(depth), -depth}},
         {}});
    depth = far;
    draw(drawing.sheet, layer.behind, {{cut_at(far), -far}, {end, -far}});
  }

  drawing.flanks = {{.name = "wall",
                     .layers = corner.layers,
                     .inside = corner.inside,
                     .outside = corner.outside,
                     .internal = end,
                     .overall_internal = end,
                     .external = end - cut_at(thickness)}};
  drawing.thickness = thickness;
  drawing.halves = 2;
  drawing.places = {{"the angle of the bay", {0, 0}, {0, 0}},
                    {"the wall of the bay", {0, 0}, {end, 0}}};
  return drawing;
}

}  // namespace quoin::geometry
