// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/partition.hpp"

#include <algorithm>

namespace quoin::geometry {
namespace {

/// The faces of a partition and its outside wall, m.
struct Lines {
  explicit Lines(const Partition& junction)
      : thickness(thickness_of(junction.layers)),
        lining(thickness_of(junction.lining)),
        side(thickness_of(junction.partition) / 2),
        cover(thickness_of(junction.on_sides)),
        return_end(lining + (junction.on_sides.empty() ? 0.0 : junction.return_length)),
        top(junction.length.value_or(return_end + cut_distance(2 * side))),
        end(side + junction.wall.value_or(cut_distance(thickness + lining))) {}

  double thickness;   ///< of the outside wall without lining
  double lining;      ///< of the outside wall
  double side;        ///< from the middle of the partition
  double cover;       ///< thickness of the return
  double return_end;  ///< from the outside wall
  double top, end;
};

/// Lining and return on one side, +1 right, -1 left: layer by layer from their faces inwards, each
/// covering all but a strip of the one before, so that they meet in the angle.
void line(Sheet& sheet, const Partition& junction, const Lines& at, double hand) {
  const auto paint = [&](RegionId region, double from, double to, double height) {
    const double x0 = hand * (at.side + from), x1 = hand * (at.side + to);
    sheet.push_back({region, rectangle(std::min(x0, x1), std::max(x0, x1), 0, height), {}});
  };
  double depth = at.lining, cover = at.cover;
  const std::size_t most = std::max(junction.lining.size(), junction.on_sides.size());
  for (std::size_t k = 0; k < most; ++k) {
    if (k < junction.lining.size()) {
      paint(junction.lining[k].region, 0, at.end - at.side, depth);
      depth -= junction.lining[k].thickness;
    }
    if (k < junction.on_sides.size()) {
      paint(junction.on_sides[k].region, 0, cover, at.return_end);
      cover -= junction.on_sides[k].thickness;
    }
    const auto line_at = [&](const std::vector<Layer>& layers, Point from, Point to) {
      if (k >= layers.size()) return;
      const auto place = [&](Point p) { return Point{hand * (at.side + p.x), p.y}; };
      draw(sheet, layers[k].behind, {place(from), place(to)});
    };
    line_at(junction.lining, {cover, depth}, {at.end - at.side, depth});
    line_at(junction.on_sides, {cover, depth}, {cover, at.return_end});
  }
}

}  // namespace

Drawing drawing_of(const Partition& junction) {
  const Lines at(junction);
  const bool parts_airs = junction.beyond.valid();
  Drawing drawing;
  drawing.sheet = {
      {junction.inside, rectangle(-at.end, -at.side, 0, at.top), {}},
      {parts_airs ? junction.beyond : junction.inside, rectangle(at.side, at.end, 0, at.top), {}},
      {junction.outside,
       rectangle(-at.end, at.end, -at.thickness - space_margin, -at.thickness),
       {}}};
  for (const double hand : {-1.0, 1.0}) line(drawing.sheet, junction, at, hand);
  lay(drawing.sheet, junction.layers, 0, -at.end, at.end);
  stand(drawing.sheet, junction.partition, -at.side, -junction.bond, at.top);

  Flank wall{.name = "wall",
             .layers = together(junction.lining, junction.layers),
             .inside = junction.inside,
             .outside = junction.outside};
  if (!parts_airs) {
    wall.internal = 2 * (at.end - at.side);
    wall.overall_internal = wall.external = 2 * at.end;
  }
  drawing.flanks = {wall};
  drawing.thickness = at.thickness + at.lining;
  const bool returned = !junction.on_sides.empty();
  for (const double hand : {-1.0, 1.0}) {
    const double face = hand * (at.side + at.cover), bare = hand * at.side;
    const Point angle{face, at.lining}, corner{face, at.return_end}, stop{bare, at.return_end};
    drawing.places.push_back({"the angle at the partition", angle, angle});
    if (returned) {
      drawing.places.push_back({"the end of the return", stop, stop});
      drawing.places.push_back({"the end of the return", corner, stop});
      drawing.places.push_back({"the return", angle, corner});
    }
    drawing.places.push_back({"the partition", returned ? stop : angle, {bare, at.top}});
    drawing.places.push_back({"the outside wall", angle, {hand * at.end, at.lining}});
  }
  return drawing;
}

std::optional<std::string> objection_to(const Partition& junction) {
  const Lines at(junction);
  if (junction.bond > at.thickness + snap_tolerance) {
    return "the partition reaches through the outside wall into the open";
  }
  if (at.cover > at.end - at.side - snap_tolerance) {
    return "the return covers all of the outside wall that is drawn: make the wall longer";
  }
  if (at.return_end > at.top - snap_tolerance) {
    return "the linings reach to the end of the partition: make it longer";
  }
  return std::nullopt;
}

}  // namespace quoin::geometry
