// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/zones.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <utility>

#include "geometry/mesh.hpp"
#include "geometry/surface.hpp"

namespace quoin::tools {
namespace {

using Box = cases::SurveyBox;
using geometry::Point;

/// Ends of a zone keep this far from readings, m.
constexpr double clearance = 0.06;
constexpr double touching = 1e-6;

struct Span {
  double from = 1e9;
  double to = -1e9;

  void take(double at) {
    from = std::min(from, at);
    to = std::max(to, at);
  }
  [[nodiscard]] double length() const { return std::max(0.0, to - from); }
};

/// The places of the inside surfaces of a variant, as pairs of ends of straight pieces.
std::vector<std::pair<Point, Point>> inside_faces(const cases::Variant& variant) {
  const geometry::Section section = geometry::section_of(variant.sheet);
  const geometry::Mesh mesh = geometry::mesh_of(section, geometry::subdivision_of(section, 1.0));
  std::vector<std::pair<Point, Point>> pieces;
  for (const geometry::Face& face : geometry::faces(mesh)) {
    if (variant.spaces[face.space].is != cases::SpaceKind::outside)
      pieces.emplace_back(mesh.place(face.from), mesh.place(face.to));
  }
  return pieces;
}

/// One axis of a zone: what of the inside surface it covers, and whether that runs on beyond.
struct Along {
  Span covered;
  bool runs_on_below = false;
  bool runs_on_above = false;
};

Along along_axis(const std::vector<std::pair<Point, Point>>& faces, double Point::*axis,
                 double Point::*across, double from, double to, double low, double high) {
  Along result;
  Span whole;
  for (const auto& [a, b] : faces) {
    if (std::abs(a.*axis - b.*axis) < touching) continue;  // runs across
    if (std::max(a.*across, b.*across) < low - touching ||
        std::min(a.*across, b.*across) > high + touching)
      continue;
    const double begin = std::min(a.*axis, b.*axis), end = std::max(a.*axis, b.*axis);
    whole.take(begin);
    whole.take(end);
    if (end <= from + touching || begin >= to - touching) continue;
    result.covered.take(std::max(begin, from));
    result.covered.take(std::min(end, to));
  }
  result.runs_on_below = whole.from < from - touching;
  result.runs_on_above = whole.to > to + touching;
  return result;
}

/// An end moved so that no reading lies upon it.
double away_from(double end, const std::vector<double>& readings) {
  double moved = end;
  for (const double at : readings) {
    if (std::abs(at - moved) >= clearance) continue;
    moved = moved >= at ? at + clearance : at - clearance;
  }
  return moved;
}

struct Ends {
  double from = 0.0;
  double to = 0.0;
};

Ends scaled(Ends ends, const Along& along, double factor, const std::vector<double>& readings) {
  if (factor == 1.0 || along.covered.length() <= touching) return ends;
  if (!along.runs_on_below && !along.runs_on_above) return ends;
  const double length = along.covered.length();
  if (along.runs_on_below && along.runs_on_above) {
    const double change = (factor - 1.0) * length / 2;
    return {away_from(ends.from - change, readings), away_from(ends.to + change, readings)};
  }
  if (along.runs_on_above)
    return {ends.from, away_from(along.covered.from + factor * length, readings)};
  return {away_from(along.covered.to - factor * length, readings), ends.to};
}

std::vector<double> along(const std::vector<Point>& read_at, double Point::*axis) {
  std::vector<double> places;
  for (const Point place : read_at) places.push_back(place.*axis);
  std::sort(places.begin(), places.end());
  return places;
}

}  // namespace

std::array<Box, 3> extents_of(const cases::Zone& zone, const cases::Variant& variant,
                              const std::vector<Point>& read_at) {
  const auto faces = inside_faces(variant);
  const Box& box = zone.box;
  const Along x =
      along_axis(faces, &Point::x, &Point::y, box.x_from, box.x_to, box.y_from, box.y_to);
  const Along y =
      along_axis(faces, &Point::y, &Point::x, box.y_from, box.y_to, box.x_from, box.x_to);
  std::array<Box, 3> boxes;
  for (std::size_t e = 0; e < boxes.size(); ++e) {
    const Ends of_x =
        scaled({box.x_from, box.x_to}, x, extent_factors[e], along(read_at, &Point::x));
    const Ends of_y =
        scaled({box.y_from, box.y_to}, y, extent_factors[e], along(read_at, &Point::y));
    boxes[e] = {of_x.from, of_x.to, of_y.from, of_y.to};
  }
  const auto nest = [](Box& inner, const Box& outer) {
    inner = {std::max(inner.x_from, outer.x_from), std::min(inner.x_to, outer.x_to),
             std::max(inner.y_from, outer.y_from), std::min(inner.y_to, outer.y_to)};
  };
  nest(boxes[0], boxes[1]);
  const auto widen = [](Box& outer, const Box& inner) {
    outer = {std::min(inner.x_from, outer.x_from), std::max(inner.x_to, outer.x_to),
             std::min(inner.y_from, outer.y_from), std::max(inner.y_to, outer.y_to)};
  };
  widen(boxes[2], boxes[1]);
  return boxes;
}

ZonedSection zoned_section(const cases::Variant& variant, const std::vector<cases::Zone>& zones,
                           const std::vector<Point>& read_at, const std::vector<Point>& lines_at) {
  ZonedSection result;
  geometry::Sheet sheet = variant.sheet;
  for (const cases::RegionId id : geometry::ids(variant.regions))
    result.regions.push_back({id, std::vector<std::uint8_t>(zones.size(), 0)});
  for (std::size_t z = 0; z < zones.size(); ++z) {
    const std::array<Box, 3> boxes = extents_of(zones[z], variant, read_at);
    // The largest first: what lies in a smaller one is painted over what lies in the larger.
    for (std::size_t e = boxes.size(); e-- > 0;) {
      const Box& box = boxes[e];
      const std::size_t before = result.regions.size();
      for (std::size_t r = 0; r < before; ++r) {
        const ZonedRegion over = result.regions[r];
        if (variant.regions[over.region].name != zones[z].of) continue;
        if (over.depth[z] != 2 - e) continue;
        ZonedRegion deeper = over;
        ++deeper.depth[z];
        sheet.push_back({cases::RegionId(result.regions.size()),
                         geometry::rectangle(box.x_from, box.x_to, box.y_from, box.y_to),
                         cases::RegionId(r)});
        result.regions.push_back(std::move(deeper));
      }
    }
  }
  result.section = geometry::with_lines_through(geometry::section_of(sheet), lines_at);
  std::vector<bool> seen(result.regions.size(), false);
  for (const geometry::Cell& cell : result.section.cells) {
    for (const geometry::Fill* fill : {&cell.below, &cell.above}) {
      if (const auto* region = std::get_if<cases::RegionId>(fill)) seen[region->index] = true;
    }
  }
  result.varies.assign(zones.size(), false);
  for (std::size_t r = 0; r < seen.size(); ++r) {
    for (std::size_t z = 0; z < zones.size(); ++z) {
      const auto depth = result.regions[r].depth[z];
      if (seen[r] && (depth == 1 || depth == 2)) result.varies[z] = true;
    }
  }
  return result;
}

}  // namespace quoin::tools
