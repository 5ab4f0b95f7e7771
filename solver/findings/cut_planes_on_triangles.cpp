// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>
#include <limits>
#include <map>
#include <utility>

#include "solver/findings/cut_planes.hpp"
#include "solver/findings/plane_wall.hpp"

namespace quoin::solver {
namespace {

using geometry::Face;
using geometry::Point;

constexpr double straight = 2e-5;  // m: points that near to a line are on it

/// A side of an element beyond which there is nothing, walked with the material on the left.
struct Side {
  std::uint32_t from = 0;
  std::uint32_t middle = 0;
  std::uint32_t to = 0;
  RegionId region;
};

using Sides = std::map<std::uint32_t, Side>;  // by the node they begin at
using Ends = std::map<std::size_t, Face>;     // faces of surfaces, by a node

double distance(Point from, Point to, Point place) {
  const double x = to.x - from.x, y = to.y - from.y;
  const double share =
      std::clamp(((place.x - from.x) * x + (place.y - from.y) * y) / (x * x + y * y), 0.0, 1.0);
  return std::hypot(from.x + share * x - place.x, from.y + share * y - place.y);
}

/// The sides of elements that no other element and no space shares.
Sides cut_sides(const OnTriangles& triangles) {
  std::map<std::uint32_t, std::pair<Side, int>> by_middle;
  for (const geometry::Element& element : triangles.elements) {
    for (std::size_t k = 0; k < 3; ++k) {
      const Side side{element.node[(k + 1) % 3], element.node[k + 3], element.node[(k + 2) % 3],
                      element.region};
      ++by_middle.emplace(side.middle, std::pair{side, 0}).first->second.second;
    }
  }
  for (const geometry::Surface& surface : triangles.surfaces) {
    for (const Face& face : surface.faces) by_middle.erase(std::uint32_t(face.to));
  }
  Sides sides;
  for (const auto& [middle, known] : by_middle) {
    if (known.second == 1) sides.emplace(known.first.from, known.first);
  }
  return sides;
}

bool goes_on(const OnTriangles& triangles, const Side& before, const Side& after) {
  const auto& at = triangles.places;
  const Point a = at[before.from], b = at[before.to], c = at[after.to];
  const double x = b.x - a.x, y = b.y - a.y, u = c.x - b.x, v = c.y - b.y;
  const double one = std::hypot(x, y), other = std::hypot(u, v);
  return x * u + y * v > one * other / 2 &&
         std::abs(x * v - y * u) <= straight * std::max(one, other);
}

/// The straight runs of sides, each from its first.
std::vector<std::vector<Side>> runs_of(const OnTriangles& triangles, const Sides& sides) {
  std::map<std::uint32_t, const Side*> by_end;
  for (const auto& [from, side] : sides) by_end.emplace(side.to, &side);
  std::vector<std::vector<Side>> runs;
  for (const auto& [from, side] : sides) {
    const auto before = by_end.find(from);
    if (before != by_end.end() && goes_on(triangles, *before->second, side)) continue;
    std::vector<Side> run = {side};
    for (auto next = sides.find(side.to);
         next != sides.end() && goes_on(triangles, run.back(), next->second);
         next = sides.find(run.back().to)) {
      run.push_back(next->second);
    }
    runs.push_back(std::move(run));
  }
  return runs;
}

/// Whether a surface stands at right angles to a plane: it does where a plane wall is cut, and not
/// where a detail is cut by symmetry, through an angle.
bool is_square(const OnTriangles& triangles, const CutPlane& plane, const Face& surface) {
  constexpr double askew = 0.02;  // a degree
  const Point a = triangles.places[surface.from], b = triangles.places[surface.to];
  const double x = plane.to.x - plane.from.x, y = plane.to.y - plane.from.y;
  const double u = b.x - a.x, v = b.y - a.y;
  return std::abs(x * u + y * v) <= askew * std::hypot(x, y) * std::hypot(u, v);
}

/// Departure from the plane wall that a run would cut, of which the faces of surfaces at both its
/// ends tell the surface resistances.
double departure(const OnTriangles& triangles, const std::vector<SpaceId>& airs,
                 const Physics& physics, const std::vector<Side>& run, const Face& start,
                 const Face& finish) {
  const auto resistance = [&](const Face& face) {
    return physics.surface_resistance(face.space, face.region, face.facing);
  };
  PlaneWall wall{physics.air[start.space], physics.air[finish.space], {}, 0.0};
  double passed = resistance(start);
  wall.nodes.push_back({run.front().from, passed});
  for (const Side& side : run) {
    const Point a = triangles.places[side.from], b = triangles.places[side.to];
    const double whole = std::hypot(b.x - a.x, b.y - a.y) / physics.conductivity[side.region];
    wall.nodes.push_back({side.middle, passed + whole / 2});
    passed += whole;
    wall.nodes.push_back({side.to, passed});
  }
  wall.total = passed + resistance(finish);
  return departure_from(wall, triangles.basis, airs);
}

}  // namespace

std::vector<CutPlane> cut_planes(const OnTriangles& triangles, const std::vector<SpaceId>& airs,
                                 const Physics& physics, Point coldest) {
  Ends begins, ends;
  for (const geometry::Surface& surface : triangles.surfaces) {
    for (const Face& face : surface.faces) {
      begins.emplace(face.from, face);
      ends.emplace(face.to, face);
    }
  }
  std::vector<CutPlane> planes;
  for (const std::vector<Side>& run : runs_of(triangles, cut_sides(triangles))) {
    CutPlane plane;
    plane.from = triangles.places[run.front().from];
    plane.to = triangles.places[run.back().to];
    const auto start = ends.find(run.front().from), finish = begins.find(run.back().to);
    plane.departure = std::numeric_limits<double>::quiet_NaN();
    if (start != ends.end() && finish != begins.end() &&
        is_square(triangles, plane, start->second) && is_square(triangles, plane, finish->second))
      plane.departure = departure(triangles, airs, physics, run, start->second, finish->second);
    plane.fabric = std::any_of(run.begin(), run.end(), [&](const Side& side) {
      return physics.is_fabric[side.region] != 0;
    });
    plane.distance = distance(plane.from, plane.to, coldest);
    planes.push_back(plane);
  }
  return planes;
}

}  // namespace quoin::solver
