// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/chimney_breast.hpp"

namespace quoin::geometry {

Drawing drawing_of(const ChimneyBreast& chimney) {
  Drawing drawing;
  const double thickness = thickness_of(chimney.layers);
  const double lining = thickness_of(chimney.lining);
  const double side = chimney.breast_width / 2;
  const double front = chimney.projection;
  const double end = side + lining + chimney.wall.value_or(cut_distance(thickness + lining));

  drawing.sheet = {
      {chimney.inside, rectangle(-end, end, 0, front + lining + space_margin), {}},
      {chimney.outside, rectangle(-end, end, -thickness - space_margin, -thickness), {}}};
  double off = lining;
  for (const Layer& layer : chimney.lining) {  // each covers all but a strip of the one before
    drawing.sheet.push_back({layer.region, rectangle(-end, end, 0, off), {}});
    drawing.sheet.push_back({layer.region, rectangle(-side - off, side + off, 0, front + off), {}});
    off -= layer.thickness;
    draw(drawing.sheet, layer.behind,
         {{-end, off},
          {-side - off, off},
          {-side - off, front + off},
          {side + off, front + off},
          {side + off, off},
          {end, off}});
  }
  lay(drawing.sheet, chimney.layers, 0, -end, end);
  drawing.sheet.push_back({chimney.breast, rectangle(-side, side, 0, front), {}});
  if (chimney.flue.valid()) {
    const double flue_front = front - chimney.cover;
    drawing.sheet.push_back({chimney.flue,
                             rectangle(-chimney.flue_width / 2, chimney.flue_width / 2,
                                       flue_front - chimney.flue_depth, flue_front),
                             {}});
  }

  Flank wall{.name = "wall",
             .layers = together(chimney.lining, chimney.layers),
             .inside = chimney.inside,
             .outside = chimney.outside};
  if (!chimney.flue.valid()) wall.internal = wall.overall_internal = wall.external = 2 * end;
  drawing.flanks = {wall};
  drawing.thickness = thickness + lining;
  for (const double hand : {-1.0, 1.0}) {
    const Point angle{hand * (side + lining), lining},
        arris{hand * (side + lining), front + lining};
    drawing.places.push_back({"the angle beside the breast", angle, angle});
    drawing.places.push_back({"the arris of the breast", arris, arris});
    drawing.places.push_back({"the cheek of the breast", angle, arris});
    drawing.places.push_back({"the front of the breast", arris, {0, front + lining}});
    drawing.places.push_back({"the wall beside the breast", angle, {hand * end, lining}});
  }
  return drawing;
}

std::optional<std::string> objection_to(const ChimneyBreast& chimney) {
  if (!chimney.flue.valid()) return std::nullopt;
  if (chimney.flue_width > chimney.breast_width - snap_tolerance) {
    return "the flue is as wide as the breast";
  }
  const double back = chimney.projection - chimney.cover - chimney.flue_depth;
  if (back < -thickness_of(chimney.layers) + snap_tolerance) {
    return "the flue reaches through the outside wall into the open";
  }
  return std::nullopt;
}

}  // namespace quoin::geometry
