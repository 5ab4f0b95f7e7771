// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/reveal.hpp"

#include <cmath>

namespace quoin::geometry {

Drawing drawing_of(const Reveal& reveal) {
  Drawing drawing;
  const double thickness = thickness_of(reveal.layers);
  const double wall = reveal.wall.value_or(cut_distance(thickness));
  const double frame_outside = -thickness + reveal.frame_setback;
  const double frame_inside = frame_outside + reveal.frame_depth;
  const double west = -wall;
  const double east = reveal.frame_width;
  // A lining follows the splay: seen along the wall it is longer than it is thick.
  const double slant = reveal.splay == 0.0 ? 1.0 : std::hypot(1.0, reveal.splay / frame_inside);
  const double lining = slant * thickness_of(reveal.lining);

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
    if (layer.hollow && reveal.closer.valid()) {
      drawing.sheet.push_back(
          {reveal.closer, rectangle(-reveal.closer_depth, 0, y - layer.thickness, y), {}});
    }
    y -= layer.thickness;
  }
  const auto beside_reveal = [&](double from, double to) {
    return Outline{
        {from, frame_inside}, {to, frame_inside}, {to - reveal.splay, 0}, {from - reveal.splay, 0}};
  };
  if (reveal.splay > 0) {
    drawing.sheet.push_back({reveal.inside, {{0, frame_inside}, {0, 0}, {-reveal.splay, 0}}, {}});
  }
  double x = lining;
  for (const Layer& layer : reveal.lining) {
    const double next = x - slant * layer.thickness;
    drawing.sheet.push_back({layer.region, beside_reveal(next, x), {}});
    x = next;
  }
  drawing.sheet.push_back({reveal.frame, rectangle(0, east, frame_outside, frame_inside), {}});

  const double inner_wall = wall - reveal.splay + lining;
  drawing.flanks = {{.name = "wall",
                     .layers = reveal.layers,
                     .inside = reveal.inside,
                     .outside = reveal.outside,
                     .internal = inner_wall,
                     .overall_internal = inner_wall,
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
  const Point arris = {lining - reveal.splay, 0};
  drawing.places = {{"the frame edge", edge, edge},
                    {"the arris of the reveal", arris, arris},
                    {"the reveal", edge, arris},
                    {"the frame", edge, {east, frame_inside}},
                    {"the wall beside the window", {west, 0}, arris}};
  return drawing;
}

std::optional<std::string> objection_to(const Reveal& reveal) {
  const double thickness = thickness_of(reveal.layers);
  if (auto objection = objection_to_frame(reveal.frame_setback, reveal.frame_depth, thickness)) {
    return objection;
  }
  if (reveal.splay > 0 && reveal.frame_setback + reveal.frame_depth > thickness - snap_tolerance) {
    return "a splay needs a reveal between frame and room, but the frame is flush with the inside";
  }
  if (reveal.splay >= reveal.wall.value_or(cut_distance(thickness)) - snap_tolerance) {
    return "the splay cuts back the whole wall: make the wall longer";
  }
  if (thickness_of(reveal.lining) > reveal.frame_width - snap_tolerance) {
    return "the lining of the reveal covers the whole frame";
  }
  if (!reveal.lining.empty() &&
      reveal.frame_setback + reveal.frame_depth > thickness - snap_tolerance) {
    return "a lining needs a reveal between frame and room, but the frame is flush with the inside";
  }
  return objection_to_closer(reveal.layers, reveal.closer, reveal.closer_depth,
                             reveal.wall.value_or(cut_distance(thickness)));
}

}  // namespace quoin::geometry
