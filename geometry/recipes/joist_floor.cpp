// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/joist_floor.hpp"

namespace quoin::geometry {
namespace {

/// The levels and faces of a floor and its wall, m.
struct Lines {
  explicit Lines(const JoistFloor& floor)
      : thickness(thickness_of(floor.layers)),
        lining(thickness_of(floor.lining)),
        wall(floor.wall.value_or(floor.lining_gap + cut_distance(thickness + lining))),
        floor_top(thickness_of(floor.boards)),
        ceiling_under(-floor.joist_depth - thickness_of(floor.ceiling)),
        top(floor_top + wall),
        bottom(ceiling_under - wall),
        west(-lining - floor.length.value_or(cut_distance(floor_top - ceiling_under))) {}

  double thickness;  ///< of the outside wall without lining
  double lining;
  double wall;
  double floor_top, ceiling_under, top, bottom, west;
};

}  // namespace

Drawing drawing_of(const JoistFloor& floor) {
  const Lines at(floor);
  const bool parts_airs = floor.below.valid();
  Drawing drawing;
  drawing.sheet = {
      {floor.inside, rectangle(at.west, 0, at.floor_top, at.top), {}},
      {parts_airs ? floor.below : floor.inside,
       rectangle(at.west, 0, at.bottom, at.ceiling_under),
       {}},
      {floor.outside, rectangle(at.thickness, at.thickness + space_margin, at.bottom, at.top), {}}};
  stand(drawing.sheet, floor.lining, -at.lining, at.floor_top + floor.lining_gap, at.top);
  stand(drawing.sheet, floor.lining, -at.lining, at.bottom, at.ceiling_under - floor.lining_gap);
  stand(drawing.sheet, floor.layers, 0, at.bottom, at.top);
  lay(drawing.sheet, floor.boards, at.floor_top, at.west, 0);
  lay(drawing.sheet, floor.ceiling, -floor.joist_depth, at.west, 0);
  const double end = floor.bearing;
  drawing.sheet.push_back({floor.joist, rectangle(at.west, end, -floor.joist_depth, 0), {}});
  if (floor.pocket.valid()) {
    drawing.sheet.push_back(
        {floor.pocket, rectangle(end, end + floor.pocket_depth, -floor.joist_depth, 0), {}});
  }

  Flank wall{.name = "wall",
             .layers = together(floor.lining, floor.layers),
             .inside = floor.inside,
             .outside = floor.outside};
  if (!parts_airs) {
    wall.internal = 2 * at.wall;
    wall.overall_internal = wall.external = at.top - at.bottom;
  }
  drawing.flanks = {wall};
  drawing.thickness = at.thickness + at.lining;
  const double face = floor.lining_gap > 0 ? 0.0 : -at.lining;
  const Point above{face, at.floor_top}, under{face, at.ceiling_under};
  drawing.places = {{"the angle above the floor", above, above},
                    {"the angle below the ceiling", under, under},
                    {"the wall above the floor", above, {face, at.top}},
                    {"the wall below the ceiling", under, {face, at.bottom}},
                    {"the wall above the floor", above, {-at.lining, at.top}},
                    {"the wall below the ceiling", under, {-at.lining, at.bottom}},
                    {"the floor", above, {at.west, at.floor_top}},
                    {"the ceiling", under, {at.west, at.ceiling_under}}};
  if (end > 0) {
    const Point middle{end, -floor.joist_depth / 2};
    drawing.timber_ends = {{"the joist end", middle, middle}};
  }
  return drawing;
}

std::optional<std::string> objection_to(const JoistFloor& floor) {
  const Lines at(floor);
  const double end = floor.bearing + (floor.pocket.valid() ? floor.pocket_depth : 0.0);
  if (end > at.thickness - snap_tolerance) {
    return "the joist with its pocket reaches through the wall into the open";
  }
  if (floor.pocket.valid() && floor.bearing < snap_tolerance) {
    return "a pocket needs a joist that bears in the wall";
  }
  if (floor.lining_gap > at.wall - snap_tolerance) {
    return "the gap leaves nothing of the lining: make the wall longer";
  }
  return std::nullopt;
}

}  // namespace quoin::geometry
