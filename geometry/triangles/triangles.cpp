// SPDX-License-Identifier: Apache-2.0
#include "geometry/triangles/triangles.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "geometry/paint.hpp"
#include "geometry/triangles/arrangement.hpp"

namespace quoin::geometry {
namespace {

struct Area {
  const Patch* patch;
  Extent extent;
};

std::vector<Area> areas_of(const Sheet& sheet) {
  std::vector<Area> areas;
  for (const Patch& patch : sheet) {
    if (membrane_of(patch) != nullptr || patch.outline.size() < 3) continue;
    areas.push_back({&patch, extent_of(patch.outline)});
  }
  return areas;
}

/// What a sheet shows at a place that lies on no outline: the painter's order.
Fill shown_at(const std::vector<Area>& areas, Point place) {
  Fill shown = std::monostate{};
  for (const auto& [patch, extent] : areas) {
    if (patch->only_over && shown != Fill{*patch->only_over}) continue;
    if (place.x < extent.low.x || place.x > extent.high.x || place.y < extent.low.y ||
        place.y > extent.high.y || !inside(patch->outline, place)) {
      continue;
    }
    shown = patch->fill;
  }
  return shown;
}

/// Of one face of the drawing the triangles, and the roundest of the large ones: its middle is
/// farthest from any outline.
struct DrawnFace {
  std::vector<std::uint32_t> triangles;
  std::uint32_t roundest = 0;
};

DrawnFace face_from(const Triangulation& net, std::uint32_t first, std::vector<char>& seen) {
  DrawnFace face{{first}, first};
  seen[first] = 1;
  double best = 0.0;
  for (std::size_t n = 0; n < face.triangles.size(); ++n) {
    const std::uint32_t here = face.triangles[n];
    const double radius =
        net.area(here) / (net.length({here, 0}) + net.length({here, 1}) + net.length({here, 2}));
    if (radius > best) {
      best = radius;
      face.roundest = here;
    }
    for (std::size_t k = 0; k < 3; ++k) {
      const std::uint32_t beyond = net.triangles()[here].beyond[k];
      if (net.triangles()[here].fixed[k] || beyond == Triangle::none || seen[beyond] != 0) continue;
      seen[beyond] = 1;
      face.triangles.push_back(beyond);
    }
  }
  return face;
}

void paint(Triangles& triangles, const std::vector<Area>& areas) {
  std::vector<char> seen(triangles.net.triangles().size(), 0);
  for (std::uint32_t t = 0; t < seen.size(); ++t) {
    if (seen[t] != 0) continue;
    const DrawnFace face = face_from(triangles.net, t, seen);
    const Fill fill = shown_at(areas, triangles.net.middle(face.roundest));
    auto known = std::find(triangles.fills.begin(), triangles.fills.end(), fill);
    if (known == triangles.fills.end()) {
      known = triangles.fills.insert(triangles.fills.end(), fill);
    }
    const auto part = static_cast<std::uint32_t>(known - triangles.fills.begin());
    for (const std::uint32_t each : face.triangles) triangles.net.triangles()[each].part = part;
  }
}

}  // namespace

Triangles triangles_of(const Sheet& sheet, const std::vector<Point>& places) {
  const std::vector<Area> areas = areas_of(sheet);
  if (areas.empty()) throw std::runtime_error("a sheet without areas has no triangles");
  Extent all = areas.front().extent;
  std::vector<Outline> outlines;
  for (const auto& [patch, extent] : areas) {
    outlines.push_back(patch->outline);
    all.low = {std::min(all.low.x, extent.low.x), std::min(all.low.y, extent.low.y)};
    all.high = {std::max(all.high.x, extent.high.x), std::max(all.high.y, extent.high.y)};
  }
  const double room = 1 + std::max(all.high.x - all.low.x, all.high.y - all.low.y);
  const double reach = std::max({std::abs(all.low.x), std::abs(all.low.y), std::abs(all.high.x),
                                 std::abs(all.high.y)}) +
                       room;
  const Raster raster(reach);
  const Arrangement arrangement = arrangement_of(outlines, places, raster);

  Triangles triangles{Triangulation({all.low.x - room, all.low.y - room},
                                    {all.high.x + room, all.high.y + room}, raster),
                      {std::monostate{}}};
  std::vector<std::uint32_t> number;
  std::uint32_t near = 0;
  for (const Point point : arrangement.points) {
    number.push_back(triangles.net.insert(point, near));
    near = triangles.net.around(number.back()).front();
  }
  for (const auto& [from, to] : arrangement.edges) triangles.net.fix(number[from], number[to]);
  paint(triangles, areas);
  triangles.net.free_inner_sides();
  return triangles;
}

double solid_area(const Triangles& triangles) {
  double sum = 0.0;
  for (std::uint32_t t = 0; t < triangles.net.triangles().size(); ++t) {
    if (triangles.is_solid(t)) sum += triangles.net.area(t);
  }
  return sum;
}

}  // namespace quoin::geometry
