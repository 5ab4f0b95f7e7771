// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/reveal.hpp"

namespace quoin::geometry {

Drawing drawing_of(const Reveal& reveal) {
  Drawing drawing;
  const double thickness = thickness_of(reveal.layers);
  const double lining = thickness_of(reveal.lining);
  const double frame_outside = -thickness + reveal.frame_setback;
  const double frame_inside = frame_outside + reveal.frame_depth;
  const double wall = reveal.wall.value_or(cut_distance(thickness));
  const double west = -wall;
  const double east = reveal.frame_width;

  drawing.sheet = {
      {reveal.inside, rectangle(west, east, 0, space_margin), {}},
      {reveal.inside, rectangle(0, east, frame_inside, 0), {}},
      {reveal.outside, rectangle(west, east, -thickness - space_margin, -thickness), {}}};
  if (reveal.frame_setback > 0) {
    drawing.sheet.push_back({reveal.outside, rectangle(0, east, -thickness, frame_outside), {}});
  }
  double y = 0.0;
  for (const Layer& layer : reveal.layers) {
    drawing.sheet.push_back({layer.region, rectangle(west, 0, y - layer.thickness, y), {}});
    y -= layer.thickness;
  }
  double x = lining;
  for (const Layer& layer : reveal.lining) {
    drawing.sheet.push_back({layer.region, rectangle(x - layer.thickness, x, frame_inside, 0), {}});
    x -= layer.thickness;
  }
  drawing.sheet.push_back({reveal.frame, rectangle(0, east, frame_outside, frame_inside), {}});

  drawing.flanks = {{.name = "wall",
                     .layers = reveal.layers,
                     .inside = reveal.inside,
                     .outside = reveal.outside,
                     .internal = wall + lining,
                     .overall_internal = wall + lining,
                     .external = wall},
                    {.name = "frame",
                     .layers = {{reveal.frame, reveal.frame_depth}},
                     .inside = reveal.inside,
                     .outside = reveal.outside,
                     .internal = reveal.frame_width - lining,
                     .overall_internal = reveal.frame_width - lining,
                     .external = reveal.frame_width}};
  drawing.thickness = thickness;
  const Point edge = {lining, frame_inside};
  const Point arris = {lining, 0};
  drawing.places = {{"the frame edge", edge, edge},
                    {"the arris of the reveal", arris, arris},
                    {"the reveal", edge, arris},
                    {"the frame", edge, {east, frame_inside}},
                    {"the wall beside the window", {west, 0}, arris}};
  return drawing;
}

std::optional<std::string> objection_to(const Reveal& reveal) {
  const double thickness = thickness_of(reveal.layers);
  if (reveal.frame_setback + reveal.frame_depth > thickness + snap_tolerance) {
    return "the frame stands into the room: its setback and depth together exceed the thickness of "
           "the wall";
  }
  if (thickness_of(reveal.lining) > reveal.frame_width - snap_tolerance) {
    return "the lining of the reveal covers the whole frame";
  }
  if (!reveal.lining.empty() &&
      reveal.frame_setback + reveal.frame_depth > thickness - snap_tolerance) {
    return "a lining needs a reveal between frame and room, but the frame is flush with the inside";
  }
  return std::nullopt;
}

}  // namespace quoin::geometry
