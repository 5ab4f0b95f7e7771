// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/sill.hpp"

namespace quoin::geometry {

Drawing drawing_of(const Sill& sill) {
  Drawing drawing;
  const double thickness = thickness_of(sill.layers);
  const double wall = sill.wall.value_or(cut_distance(thickness));
  const double board = thickness_of(sill.board);
  const double frame_outside = thickness - sill.frame_setback;
  const double frame_inside = frame_outside - sill.frame_depth;
  const double top = sill.frame_height;
  const double nose = thickness + sill.sill_projection;

  drawing.sheet = {{sill.inside, rectangle(-space_margin, 0, -wall, top), {}},
                   {sill.inside, rectangle(0, frame_inside, 0, top), {}},
                   {sill.outside, rectangle(thickness, nose + space_margin, -wall, top), {}},
                   {sill.outside, rectangle(frame_outside, nose + space_margin, 0, top), {}}};
  double x = 0.0;
  for (const Layer& layer : sill.layers) {
    drawing.sheet.push_back({layer.region, rectangle(x, x + layer.thickness, -wall, 0), {}});
    if (layer.hollow && sill.closer.valid()) {
      drawing.sheet.push_back(
          {sill.closer, rectangle(x, x + layer.thickness, -sill.closer_depth, 0), {}});
    }
    x += layer.thickness;
  }
  lay(drawing.sheet, sill.board, board, 0, frame_inside);
  drawing.sheet.push_back({sill.sill,
                           {{frame_outside, 0},
                            {nose, 0},
                            {nose, sill.sill_thickness - sill.sill_fall},
                            {frame_outside, sill.sill_thickness}},
                           {}});
  drawing.sheet.push_back({sill.frame, rectangle(frame_inside, frame_outside, 0, top), {}});

  drawing.flanks = {{.name = "wall",
                     .layers = sill.layers,
                     .inside = sill.inside,
                     .outside = sill.outside,
                     .internal = wall + board,
                     .overall_internal = wall + board,
                     .external = wall},
                    {.name = "frame",
                     .layers = {{sill.frame, sill.frame_depth}},
                     .inside = sill.inside,
                     .outside = sill.outside,
                     .internal = top - board,
                     .overall_internal = top - board,
                     .external = top}};
  drawing.thickness = thickness;
  const Point edge = {frame_inside, board};
  const Point arris = {0, board};
  drawing.places = {{"the frame edge", edge, edge},
                    {"the edge of the board", arris, arris},
                    {"the board", arris, edge},
                    {"the frame", edge, {frame_inside, top}},
                    {"the wall below the window", {0, -wall}, arris}};
  return drawing;
}

std::optional<std::string> objection_to(const Sill& sill) {
  const double thickness = thickness_of(sill.layers);
  if (auto objection = objection_to_frame(sill.frame_setback, sill.frame_depth, thickness)) {
    return objection;
  }
  if (!sill.board.empty() && sill.frame_setback + sill.frame_depth > thickness - snap_tolerance) {
    return "a board needs a ledge between frame and room, but the frame is flush with the inside";
  }
  if (thickness_of(sill.board) > sill.frame_height - snap_tolerance) {
    return "the board covers the whole frame";
  }
  if (sill.sill_thickness > sill.frame_height - snap_tolerance) {
    return "the sill covers the whole frame";
  }
  if (sill.sill_fall > sill.sill_thickness - 0.001) {
    return "the sill falls by more than its thickness";
  }
  if (sill.frame_setback + sill.sill_projection < 0.001) {
    return "the sill has no depth: the frame is flush with the outside and nothing projects";
  }
  return objection_to_closer(sill.layers, sill.closer, sill.closer_depth,
                             sill.wall.value_or(cut_distance(thickness)));
}

}  // namespace quoin::geometry
