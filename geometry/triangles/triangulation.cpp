// SPDX-License-Identifier: Apache-2.0
#include "geometry/triangles/triangulation.hpp"

#include <cmath>
#include <stdexcept>
#include <utility>

namespace quoin::geometry {
namespace {

std::size_t at(int k) { return static_cast<std::size_t>(k); }

int index_of(const Triangle& triangle, std::uint32_t corner) {
  return triangle.corner[0] == corner ? 0 : triangle.corner[1] == corner ? 1 : 2;
}

}  // namespace

Triangulation::Triangulation(Point low, Point high, const Raster& raster) : raster_(raster) {
  points_ = {raster.on(low), raster.on({high.x, low.y}), raster.on(high),
             raster.on({low.x, high.y})};
  constexpr std::uint32_t none = Triangle::none;
  triangles_ = {{{0, 1, 2}, {none, 1, none}, {}, 0, 0}, {{0, 2, 3}, {none, none, 0}, {}, 0, 0}};
  at_ = {0, 0, 0, 1};
}

Point Triangulation::middle(std::uint32_t triangle) const {
  const Point a = corner(triangle, 0), b = corner(triangle, 1), c = corner(triangle, 2);
  return {(a.x + b.x + c.x) / 3, (a.y + b.y + c.y) / 3};
}

double Triangulation::area(std::uint32_t triangle) const {
  const Point a = corner(triangle, 0), b = corner(triangle, 1), c = corner(triangle, 2);
  return ((b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x)) / 2;
}

double Triangulation::length(Side side) const {
  const Point a = corner(side.triangle, next(side.k)), b = corner(side.triangle, before(side.k));
  return std::hypot(b.x - a.x, b.y - a.y);
}

Triangulation::Found Triangulation::find(Point place, std::uint32_t start,
                                         bool stop_at_fixed) const {
  std::uint32_t here = start, from = Triangle::none;
  // In a triangulation with fixed sides a walk by sight may go round in circles; it starts with
  // another side each time, so that it leaves them, and is cut off where it does not.
  for (std::size_t step = 0; step <= 4 * triangles_.size(); ++step) {
    const Triangle& triangle = triangles_[here];
    std::uint32_t onward = Triangle::none;
    for (int n = 0; n < 3 && onward == Triangle::none; ++n) {
      const int k = static_cast<int>((step + static_cast<std::size_t>(n)) % 3);
      if (triangle.beyond[at(k)] == from && from != Triangle::none) continue;
      if (turn(corner(here, next(k)), corner(here, before(k)), place) >= 0) continue;
      if (stop_at_fixed && triangle.fixed[at(k)]) return {here, Side{here, k}};
      if (triangle.beyond[at(k)] == Triangle::none) return {Triangle::none, {}};
      onward = triangle.beyond[at(k)];
    }
    if (onward == Triangle::none) return {here, {}};
    from = here;
    here = onward;
  }
  return {Triangle::none, {}};
}

std::uint32_t Triangulation::insert(Point place, std::uint32_t start) {
  place = raster_.on(place);
  const std::uint32_t triangle = find(place, start, false).triangle;
  if (triangle == Triangle::none) throw std::logic_error("a point outside of the triangulation");
  for (const std::uint32_t known : triangles_[triangle].corner) {
    if (points_[known] == place) return known;
  }
  points_.push_back(place);
  at_.push_back(triangle);
  const auto point = static_cast<std::uint32_t>(points_.size() - 1);
  for (int k = 0; k < 3; ++k) {
    if (turn(corner(triangle, next(k)), corner(triangle, before(k)), place) == 0) {
      split_at({triangle, k}, point);
      return point;
    }
  }
  insert_into(triangle, point);
  return point;
}

std::optional<std::uint32_t> Triangulation::split(Side side, Point place) {
  place = raster_.on(place);
  const Side other = twin(side);
  for (const Side one : {side, other}) {
    const Point apex = corner(one.triangle, one.k);
    if (turn(apex, corner(one.triangle, next(one.k)), place) <= 0 ||
        turn(apex, place, corner(one.triangle, before(one.k))) <= 0) {
      return std::nullopt;
    }
  }
  points_.push_back(place);
  at_.push_back(side.triangle);
  const auto point = static_cast<std::uint32_t>(points_.size() - 1);
  split_at(side, point);
  return point;
}

void Triangulation::insert_into(std::uint32_t t, std::uint32_t p) {
  const Triangle old = triangles_[t];
  const auto [a, b, c] = old.corner;
  const auto n = static_cast<std::uint32_t>(triangles_.size());
  // t: p a b, n: p b c, n + 1: p c a.
  triangles_[t] = {
      {p, a, b}, {old.beyond[2], n, n + 1}, {old.fixed[2], false, false}, old.part, old.origin};
  triangles_.push_back(
      {{p, b, c}, {old.beyond[0], n + 1, t}, {old.fixed[0], false, false}, old.part, old.origin});
  triangles_.push_back(
      {{p, c, a}, {old.beyond[1], t, n}, {old.fixed[1], false, false}, old.part, old.origin});
  relink(old.beyond[0], t, n);
  relink(old.beyond[1], t, n + 1);
  at_[p] = at_[a] = at_[b] = t;
  at_[c] = n;
  legalise({{t, 0}, {n, 0}, {n + 1, 0}});
}

void Triangulation::split_at(Side side, std::uint32_t p) {
  const Side other = twin(side);
  const std::uint32_t t = side.triangle, u = other.triangle;
  const Triangle one = triangles_[t], two = triangles_[u];
  const int k = side.k, m = other.k;
  const std::uint32_t c = one.corner[at(k)], a = one.corner[at(next(k))],
                      b = one.corner[at(before(k))], d = two.corner[at(m)];
  const bool fixed = one.fixed[at(k)];
  const auto n = static_cast<std::uint32_t>(triangles_.size());
  // t: p c a, n: p b c, u: p d b, n + 1: p a d.
  triangles_[t] = {{p, c, a},
                   {one.beyond[at(before(k))], n + 1, n},
                   {one.fixed[at(before(k))], fixed, false},
                   one.part,
                   one.origin};
  triangles_.push_back({{p, b, c},
                        {one.beyond[at(next(k))], t, u},
                        {one.fixed[at(next(k))], false, fixed},
                        one.part,
                        one.origin});
  triangles_[u] = {{p, d, b},
                   {two.beyond[at(before(m))], n, n + 1},
                   {two.fixed[at(before(m))], fixed, false},
                   two.part,
                   two.origin};
  triangles_.push_back({{p, a, d},
                        {two.beyond[at(next(m))], u, t},
                        {two.fixed[at(next(m))], false, fixed},
                        two.part,
                        two.origin});
  relink(one.beyond[at(next(k))], t, n);
  relink(two.beyond[at(next(m))], u, n + 1);
  at_[p] = at_[c] = at_[a] = t;
  at_[b] = at_[d] = u;
  legalise({{t, 0}, {n, 0}, {u, 0}, {n + 1, 0}});
}

void Triangulation::flip(Side side) {
  const Side other = twin(side);
  const std::uint32_t t = side.triangle, u = other.triangle;
  const Triangle one = triangles_[t], two = triangles_[u];
  const int k = side.k, m = other.k;
  const std::uint32_t p = one.corner[at(k)], a = one.corner[at(next(k))],
                      b = one.corner[at(before(k))], d = two.corner[at(m)];
  // The quadrangle p a d b: its diagonal a b becomes p d.
  triangles_[t] = {{p, a, d},
                   {two.beyond[at(next(m))], u, one.beyond[at(before(k))]},
                   {two.fixed[at(next(m))], false, one.fixed[at(before(k))]},
                   one.part,
                   one.origin};
  triangles_[u] = {{p, d, b},
                   {two.beyond[at(before(m))], one.beyond[at(next(k))], t},
                   {two.fixed[at(before(m))], one.fixed[at(next(k))], false},
                   two.part,
                   two.origin};
  relink(two.beyond[at(next(m))], u, t);
  relink(one.beyond[at(next(k))], t, u);
  at_[p] = at_[a] = at_[d] = t;
  at_[b] = u;
}

void Triangulation::legalise(std::vector<Side> sides) {
  while (!sides.empty()) {
    const Side side = sides.back();
    sides.pop_back();
    const Triangle& triangle = triangles_[side.triangle];
    if (triangle.fixed[at(side.k)] || triangle.beyond[at(side.k)] == Triangle::none) continue;
    const Side other = twin(side);
    if (!surely_in_circle(corner(side.triangle, 0), corner(side.triangle, 1),
                          corner(side.triangle, 2), corner(other.triangle, other.k)) ||
        !is_convex(side)) {
      continue;
    }
    const std::uint32_t t = side.triangle, u = other.triangle;
    flip(side);
    sides.insert(sides.end(), {{t, 0}, {t, 2}, {u, 0}, {u, 1}});
  }
}

void Triangulation::relink(std::uint32_t triangle, std::uint32_t from, std::uint32_t to) {
  if (triangle == Triangle::none) return;
  for (std::uint32_t& beyond : triangles_[triangle].beyond) {
    if (beyond == from) {
      beyond = to;
      return;
    }
  }
}

Side Triangulation::twin(Side side) const {
  const Triangle& triangle = triangles_[side.triangle];
  const std::uint32_t other = triangle.beyond[at(side.k)];
  const std::uint32_t end = triangle.corner[at(before(side.k))];
  return {other, before(index_of(triangles_[other], end))};
}

bool Triangulation::is_convex(Side side) const {
  const Side other = twin(side);
  const Point p = corner(side.triangle, side.k), a = corner(side.triangle, next(side.k)),
              b = corner(side.triangle, before(side.k)), d = corner(other.triangle, other.k);
  return turn(p, a, d) > 0 && turn(p, d, b) > 0;
}

std::vector<std::uint32_t> Triangulation::around(std::uint32_t point) const {
  std::vector<std::uint32_t> all;
  std::uint32_t here = at_[point];
  do {
    all.push_back(here);
    here = triangles_[here].beyond[at(next(index_of(triangles_[here], point)))];
  } while (here != at_[point] && here != Triangle::none);
  return all;
}

std::optional<Side> Triangulation::side_between(std::uint32_t from, std::uint32_t to) const {
  // Round a corner of the box the triangles do not close: look from the other end.
  const bool from_rim = from < 4;
  for (const std::uint32_t triangle : around(from_rim ? to : from)) {
    const int start = from_rim ? before(index_of(triangles_[triangle], to))
                               : index_of(triangles_[triangle], from);
    const Triangle& found = triangles_[triangle];
    if (found.corner[at(start)] == from && found.corner[at(next(start))] == to) {
      return Side{triangle, before(start)};
    }
  }
  return std::nullopt;
}

}  // namespace quoin::geometry
