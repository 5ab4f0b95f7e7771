// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/porch_wall.hpp"

namespace quoin::geometry {

Drawing drawing_of(const PorchWall& wall) {
  Drawing drawing;
  const double thickness = thickness_of(wall.layers);
  const double flank = thickness_of(wall.flank);
  const double side = wall.wall.value_or(cut_distance(thickness));
  const double west = -side, east = flank + side;
  const double end = -thickness - wall.length.value_or(cut_distance(flank));

  drawing.sheet = {{wall.inside, rectangle(west, east, 0, space_margin), {}},
                   {wall.outside, rectangle(west, 0, end, -thickness), {}},
                   {wall.porch, rectangle(flank, east, end, -thickness), {}}};
  stand(drawing.sheet, wall.flank, 0, end, -thickness);
  lay(drawing.sheet, wall.layers, 0, west, east);

  // Three airs: what goes to the porch goes on to the open, so that one psi would say nothing.
  drawing.flanks = {{.name = "wall in the open",
                     .layers = wall.layers,
                     .inside = wall.inside,
                     .outside = wall.outside},
                    {.name = "wall behind the porch",
                     .layers = wall.layers,
                     .inside = wall.inside,
                     .outside = wall.porch}};
  drawing.thickness = thickness;
  drawing.places = {{"the wall in the open", {west, 0}, {0, 0}},
                    {"the wall behind the flank wall", {0, 0}, {flank, 0}},
                    {"the wall behind the porch", {flank, 0}, {east, 0}}};
  return drawing;
}

}  // namespace quoin::geometry
