// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/head.hpp"

namespace quoin::geometry {

Drawing drawing_of(const Head& head) {
  Drawing drawing;
  const double thickness = thickness_of(head.layers);
  const double wall = head.wall.value_or(cut_distance(thickness));
  const double lining = thickness_of(head.lining);
  const double frame_outside = thickness - head.frame_setback;
  const double frame_inside = frame_outside - head.frame_depth;
  const double bottom = -head.frame_height;
  const double lintel_outside = thickness - head.lintel_setback;

  drawing.sheet = {
      {head.inside, rectangle(-space_margin, 0, bottom, wall), {}},
      {head.inside, rectangle(0, frame_inside, bottom, 0), {}},
      {head.outside, rectangle(thickness, thickness + space_margin, bottom, wall), {}}};
  if (head.frame_setback > 0) {
    drawing.sheet.push_back({head.outside, rectangle(frame_outside, thickness, bottom, 0), {}});
  }
  double x = 0.0;
  for (const Layer& layer : head.layers) {
    drawing.sheet.push_back({layer.region, rectangle(x, x + layer.thickness, 0, wall), {}});
    if (layer.hollow && head.closer.valid()) {
      drawing.sheet.push_back(
          {head.closer, rectangle(x, x + layer.thickness, 0, head.closer_depth), {}});
    }
    x += layer.thickness;
  }
  drawing.sheet.push_back(
      {head.lintel,
       rectangle(lintel_outside - head.lintel_depth, lintel_outside, 0, head.lintel_height),
       {}});
  if (head.outer_lintel.valid()) {
    drawing.sheet.push_back(
        {head.outer_lintel, rectangle(lintel_outside, thickness, 0, head.outer_height), {}});
  }
  double y = -lining;
  for (const Layer& layer : head.lining) {
    drawing.sheet.push_back({layer.region, rectangle(0, frame_inside, y, y + layer.thickness), {}});
    y += layer.thickness;
  }
  drawing.sheet.push_back({head.frame, rectangle(frame_inside, frame_outside, bottom, 0), {}});

  drawing.flanks = {{.name = "wall",
                     .layers = head.layers,
                     .inside = head.inside,
                     .outside = head.outside,
                     .internal = wall + lining,
                     .overall_internal = wall + lining,
                     .external = wall},
                    {.name = "frame",
                     .layers = {{head.frame, head.frame_depth}},
                     .inside = head.inside,
                     .outside = head.outside,
                     .internal = head.frame_height - lining,
                     .overall_internal = head.frame_height - lining,
                     .external = head.frame_height}};
  drawing.thickness = thickness;
  const Point edge = {frame_inside, -lining};
  const Point arris = {0, -lining};
  drawing.places = {{"the frame edge", edge, edge},
                    {"the edge of the soffit", arris, arris},
                    {"the soffit", arris, edge},
                    {"the frame", edge, {frame_inside, bottom}},
                    {"the wall above the window", {0, wall}, arris}};
  return drawing;
}

std::optional<std::string> objection_to(const Head& head) {
  const double thickness = thickness_of(head.layers);
  const double wall = head.wall.value_or(cut_distance(thickness));
  if (auto objection = objection_to_frame(head.frame_setback, head.frame_depth, thickness)) {
    return objection;
  }
  if (!head.lining.empty() && head.frame_setback + head.frame_depth > thickness - snap_tolerance) {
    return "a lining needs a soffit between frame and room, but the frame is flush with the inside";
  }
  if (thickness_of(head.lining) > head.frame_height - snap_tolerance) {
    return "the lining of the soffit covers the whole frame";
  }
  if (head.lintel_setback + head.lintel_depth > thickness + snap_tolerance) {
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
  return objection_to_closer(head.layers, head.closer, head.closer_depth, wall);
}

}  // namespace quoin::geometry
