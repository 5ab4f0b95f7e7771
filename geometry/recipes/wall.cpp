// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/wall.hpp"

namespace quoin::geometry {

Drawing drawing_of(const Wall& wall) {
  Drawing drawing;
  const double thickness = thickness_of(wall.layers);
  const double h = wall.height;
  drawing.sheet = {{wall.inside, rectangle(-space_margin, 0, 0, h), {}},
                   {wall.outside, rectangle(thickness, thickness + space_margin, 0, h), {}}};
  stand(drawing.sheet, wall.layers, 0, 0, h);
  drawing.flanks = {
      {.name = "wall", .layers = wall.layers, .inside = wall.inside, .outside = wall.outside}};
  drawing.thickness = thickness;
  drawing.places = {{"the wall", {0, 0}, {0, h}}};
  return drawing;
}

}  // namespace quoin::geometry
