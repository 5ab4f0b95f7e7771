// SPDX-License-Identifier: Apache-2.0
// Sides that must stay: laid by flipping what crosses them, and let go again.
#include <deque>
#include <stdexcept>
#include <utility>

#include "geometry/triangles/triangulation.hpp"

namespace quoin::geometry {
namespace {

std::size_t at(int k) { return static_cast<std::size_t>(k); }

int index_of(const Triangle& triangle, std::uint32_t corner) {
  return triangle.corner[0] == corner ? 0 : triangle.corner[1] == corner ? 1 : 2;
}

}  // namespace

void Triangulation::fix(std::uint32_t from, std::uint32_t to) {
  while (from != to) {
    if (side_between(from, to)) {
      fix_piece(from, to, {});
      return;
    }
    // From the first point towards the last, through the sides that the line crosses.
    const Point a = points_[from], b = points_[to];
    std::vector<Side> crossed;
    std::uint32_t end = Triangle::none;
    for (const std::uint32_t triangle : around(from)) {
      const int k = index_of(triangles_[triangle], from);
      const Point right = corner(triangle, next(k)), left = corner(triangle, before(k));
      const int right_turn = turn(a, b, right), left_turn = turn(a, b, left);
      const bool ahead = (right.x - a.x) * (b.x - a.x) + (right.y - a.y) * (b.y - a.y) > 0;
      if (right_turn == 0 && ahead) end = triangles_[triangle].corner[at(next(k))];
      if (right_turn < 0 && left_turn > 0) crossed.push_back({triangle, k});
    }
    if (end == Triangle::none && crossed.empty()) throw std::logic_error("a line without a way");
    while (end == Triangle::none) {
      if (triangles_[crossed.back().triangle].fixed[at(crossed.back().k)]) {
        throw std::logic_error("two fixed lines cross");
      }
      const Side other = twin(crossed.back());
      const std::uint32_t apex = triangles_[other.triangle].corner[at(other.k)];
      const int side = apex == to ? 0 : turn(a, b, points_[apex]);
      if (side == 0) {
        end = apex;
      } else {
        // With the apex on the left the line leaves between it and the right end, and the other
        // way round. Seen from this triangle the crossed side starts on the left, at next(k).
        crossed.push_back({other.triangle, side > 0 ? next(other.k) : before(other.k)});
      }
    }
    fix_piece(from, end, std::move(crossed));
    from = end;
  }
}

void Triangulation::fix_piece(std::uint32_t from, std::uint32_t to, std::vector<Side> crossed) {
  std::deque<std::pair<std::uint32_t, std::uint32_t>> waiting;
  for (const Side side : crossed) {
    const Triangle& triangle = triangles_[side.triangle];
    waiting.push_back({triangle.corner[at(next(side.k))], triangle.corner[at(before(side.k))]});
  }
  std::vector<std::pair<std::uint32_t, std::uint32_t>> made;
  while (!waiting.empty()) {
    const auto ends = waiting.front();
    waiting.pop_front();
    const Side side = *side_between(ends.first, ends.second);
    if (!is_convex(side)) {
      waiting.push_back(ends);
      continue;
    }
    const std::uint32_t p = triangles_[side.triangle].corner[at(side.k)];
    const Side other = twin(side);
    const std::uint32_t d = triangles_[other.triangle].corner[at(other.k)];
    flip(side);
    const bool still = p != from && p != to && d != from && d != to &&
                       cross(points_[from], points_[to], points_[p], points_[d]);
    if (still) {
      waiting.push_back({p, d});
    } else {
      made.push_back({p, d});
    }
  }
  for (const Side side : {*side_between(from, to), *side_between(to, from)}) {
    triangles_[side.triangle].fixed[at(side.k)] = true;
  }
  std::vector<Side> sides;
  for (const auto& [p, d] : made) {
    for (const auto& [one, other] : {std::pair{p, d}, std::pair{d, p}}) {
      const auto side = side_between(one, other);
      if (!side) continue;
      for (int k = 0; k < 3; ++k) sides.push_back({side->triangle, k});
    }
  }
  legalise(std::move(sides));
}

void Triangulation::free_inner_sides() {
  std::vector<Side> freed;
  for (std::uint32_t t = 0; t < triangles_.size(); ++t) {
    for (int k = 0; k < 3; ++k) {
      const std::uint32_t other = triangles_[t].beyond[at(k)];
      if (!triangles_[t].fixed[at(k)] || other == Triangle::none) continue;
      if (triangles_[other].part != triangles_[t].part) continue;
      triangles_[t].fixed[at(k)] = false;
      freed.push_back({t, k});
    }
  }
  legalise(std::move(freed));
}

}  // namespace quoin::geometry
