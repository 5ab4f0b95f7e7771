// SPDX-License-Identifier: Apache-2.0
#include "geometry/triangles/refinement.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

#include "geometry/triangles/arrangement.hpp"

namespace quoin::geometry {
namespace {

/// Sides shorter than this, m, are not cut.
constexpr double shortest_side = 2e-8;

double dot(Point a, Point b) { return a.x * b.x + a.y * b.y; }
Point minus(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }

Point circumcentre(Point a, Point b, Point c) {
  const Point u = minus(b, a), v = minus(c, a);
  const double twice = 2 * (u.x * v.y - u.y * v.x);
  const double u2 = dot(u, u), v2 = dot(v, v);
  return {a.x + (v.y * u2 - u.y * v2) / twice, a.y + (u.x * v2 - v.x * u2) / twice};
}

class Refiner {
 public:
  Refiner(Triangles& triangles, const AreaMap& map, std::size_t most_points)
      : triangles_(triangles), net_(triangles.net), map_(map), most_points_(most_points) {}

  bool run() {
    for (std::uint32_t t = 0; t < net_.triangles().size(); ++t) {
      net_.triangles()[t].origin = std::min(t, static_cast<std::uint32_t>(map_.wanted.size() - 1));
      waiting_.push_back(t);
    }
    for (std::size_t n = 0; n < waiting_.size(); ++n) {
      if (net_.points().size() >= most_points_) return false;
      if (triangles_.is_solid(waiting_[n])) improve(waiting_[n]);
    }
    return true;
  }

 private:
  void improve(std::uint32_t triangle) {
    const double area = net_.area(triangle);
    if (area < smallest_area) return;
    if (area > wanted_area(triangle)) {
      cut(triangle);
      return;
    }
    for (int k = 0; k < 3; ++k) {
      if (!net_.triangles()[triangle].fixed[static_cast<std::size_t>(k)]) continue;
      const Point apex = net_.corner(triangle, k), a = net_.corner(triangle, next(k)),
                  b = net_.corner(triangle, before(k));
      const Point u = minus(a, apex), v = minus(b, apex);
      if (dot(u, v) > -0.5 * std::sqrt(dot(u, u) * dot(v, v))) continue;
      const Point along = minus(b, a);
      const double foot = dot(minus(apex, a), along) / dot(along, along);
      split({triangle, k}, foot, triangle);
      return;
    }
  }

  double wanted_area(std::uint32_t triangle) {
    const Point middle = net_.middle(triangle);
    Triangle& own = net_.triangles()[triangle];
    const std::uint32_t found = map_.net.find(middle, own.origin, false).triangle;
    if (found != Triangle::none) own.origin = found;
    const WantedArea& wanted = map_.wanted[own.origin];
    if (wanted.size == 0.0) return wanted.area;
    const double distance = std::hypot(middle.x - wanted.corner.x, middle.y - wanted.corner.y);
    return wanted.area * std::pow(std::min(1.0, distance / wanted.size), 14.0 / 9);
  }

  /// Puts a point into the middle of the circle around a triangle, or cuts the fixed side that is
  /// in the way.
  void cut(std::uint32_t triangle) {
    const Point centre =
        circumcentre(net_.corner(triangle, 0), net_.corner(triangle, 1), net_.corner(triangle, 2));
    const Triangulation::Found found = net_.find(centre, triangle, true);
    std::optional<Side> hindrance = found.fixed;
    if (!hindrance && found.triangle != Triangle::none) {
      hindrance = encroached(found.triangle, centre);
    }
    if (hindrance) {
      split(*hindrance, 0.5, triangle);
      return;
    }
    if (found.triangle == Triangle::none) return;
    const std::size_t known = net_.points().size();
    const std::uint32_t point = net_.insert(centre, found.triangle);
    if (net_.points().size() > known) await(point, triangle);
  }

  /// A fixed side of a triangle that a place in it sees under more than a right angle.
  [[nodiscard]] std::optional<Side> encroached(std::uint32_t triangle, Point place) const {
    for (int k = 0; k < 3; ++k) {
      if (!net_.triangles()[triangle].fixed[static_cast<std::size_t>(k)]) continue;
      if (dot(minus(net_.corner(triangle, next(k)), place),
              minus(net_.corner(triangle, before(k)), place)) <= 0) {
        return Side{triangle, k};
      }
    }
    return std::nullopt;
  }

  void split(Side side, double share, std::uint32_t triangle) {
    if (net_.length(side) < shortest_side) return;
    const Point a = net_.corner(side.triangle, next(side.k)),
                b = net_.corner(side.triangle, before(side.k));
    const auto point = net_.split(side, {a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)});
    if (point) await(*point, triangle);
  }

  /// What changed around a new point is looked at again, and so is what it was put in for.
  void await(std::uint32_t point, std::uint32_t triangle) {
    for (const std::uint32_t changed : net_.around(point)) waiting_.push_back(changed);
    waiting_.push_back(triangle);
  }

  Triangles& triangles_;
  Triangulation& net_;
  const AreaMap& map_;
  std::size_t most_points_;
  std::vector<std::uint32_t> waiting_;
};

}  // namespace

bool refine(Triangles& triangles, const AreaMap& map, std::size_t most_points) {
  return Refiner(triangles, map, most_points).run();
}

AreaMap even_areas(const Triangles& triangles, double area) {
  AreaMap map{triangles.net, {}};
  map.wanted.assign(triangles.net.triangles().size(), {area, {}, 0.0});
  return map;
}

std::uint32_t corner_at(Triangles& triangles, Point place) {
  Triangulation& net = triangles.net;
  const std::uint32_t found = net.find(place, 0, false).triangle;
  for (int k = 0; found != Triangle::none && k < 3; ++k) {
    const Point a = net.corner(found, next(k)), b = net.corner(found, before(k));
    const Point along = minus(b, a), to = minus(place, a);
    if (std::hypot(to.x, to.y) < same_point) {
      return net.triangles()[found].corner[static_cast<std::size_t>(next(k))];
    }
    const double off = std::abs(along.x * to.y - along.y * to.x) / std::hypot(along.x, along.y);
    if (!net.triangles()[found].fixed[static_cast<std::size_t>(k)] || off > 1e-9) continue;
    const double share = dot(to, along) / dot(along, along);
    if (const auto point = net.split({found, k}, {a.x + share * along.x, a.y + share * along.y})) {
      return *point;
    }
  }
  return net.insert(place, found == Triangle::none ? 0 : found);
}

}  // namespace quoin::geometry
