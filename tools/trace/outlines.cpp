// SPDX-License-Identifier: Apache-2.0
#include "tools/trace/outlines.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace quoin::tools {
namespace {

double cross(Point a, Point b, Point c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

/// Where two stretches cross within both.
std::optional<Point> crossing(Point a, Point b, Point c, Point d) {
  const double one = cross(a, b, c), other = cross(a, b, d);
  const double third = cross(c, d, a), fourth = cross(c, d, b);
  if (one * other >= 0.0 || third * fourth >= 0.0) return std::nullopt;
  const double share = third / (third - fourth);
  return Point{a.x + share * (b.x - a.x), a.y + share * (b.y - a.y)};
}

Point middle(Point a, Point b) { return {(a.x + b.x) / 2, (a.y + b.y) / 2}; }

void keep(const Outline& line, std::size_t first, std::size_t last, double chord,
          std::vector<char>& kept) {
  double most = chord;
  std::size_t farthest = first;
  for (std::size_t k = first + 1; k < last; ++k) {
    const double away = nearest_on(line[first], line[last], line[k]).distance;
    if (away <= most) continue;
    most = away;
    farthest = k;
  }
  if (farthest == first) return;
  kept[farthest] = 1;
  keep(line, first, farthest, chord, kept);
  keep(line, farthest, last, chord, kept);
}

}  // namespace

Nearest nearest_on(Point a, Point b, Point to) {
  const double dx = b.x - a.x, dy = b.y - a.y, square = dx * dx + dy * dy;
  const double share =
      square == 0.0 ? 0.0 : std::clamp(((to.x - a.x) * dx + (to.y - a.y) * dy) / square, 0.0, 1.0);
  const Point place{a.x + share * dx, a.y + share * dy};
  return {std::hypot(to.x - place.x, to.y - place.y), place};
}

double distance_to_edge(Point point, const Outline& outline) {
  double least = std::numeric_limits<double>::infinity();
  for (std::size_t k = 0; k < outline.size(); ++k)
    least =
        std::min(least, nearest_on(outline[k], outline[(k + 1) % outline.size()], point).distance);
  return least;
}

bool lies_within(Point point, const Outline& outline) {
  bool within = false;
  for (std::size_t k = 0, before = outline.size() - 1; k < outline.size(); before = k++) {
    const Point a = outline[k], b = outline[before];
    if ((a.y > point.y) != (b.y > point.y) &&
        point.x < a.x + (b.x - a.x) * (point.y - a.y) / (b.y - a.y))
      within = !within;
  }
  return within;
}

double area_of(const Outline& outline) {
  double twice = 0.0;
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const Point a = outline[k], b = outline[(k + 1) % outline.size()];
    twice += a.x * b.y - b.x * a.y;
  }
  return std::abs(twice) / 2;
}

std::optional<Point> self_crossing(const Outline& outline) {
  const std::size_t n = outline.size();
  for (std::size_t i = 0; i < n; ++i) {
    for (std::size_t j = i + 1; j < n; ++j) {
      if (const auto place =
              crossing(outline[i], outline[(i + 1) % n], outline[j], outline[(j + 1) % n]))
        return place;
    }
  }
  return std::nullopt;
}

bool lies_in(Point point, const Area& area, double depth) {
  if (!lies_within(point, area.outline) || distance_to_edge(point, area.outline) <= depth)
    return false;
  return std::none_of(area.holes.begin(), area.holes.end(), [&](const Outline& hole) {
    return lies_within(point, hole) || distance_to_edge(point, hole) <= depth;
  });
}

std::optional<Point> shared_place(const Area& one, const Area& other, double depth) {
  // What two areas share has corners where corners of one lie in the other, or where edges cross;
  // between any two of them lies a place of it, if it is not hollow there.
  std::vector<Point> corners;
  for (const auto& [from, in] : {std::pair{&one, &other}, std::pair{&other, &one}}) {
    for (const Point point : from->outline) {
      if (lies_within(point, in->outline) || distance_to_edge(point, in->outline) <= depth)
        corners.push_back(point);
    }
  }
  const Outline &a = one.outline, &b = other.outline;
  for (std::size_t i = 0; i < a.size(); ++i) {
    for (std::size_t j = 0; j < b.size(); ++j) {
      if (const auto place = crossing(a[i], a[(i + 1) % a.size()], b[j], b[(j + 1) % b.size()]))
        corners.push_back(*place);
    }
  }
  for (std::size_t i = 0; i < corners.size(); ++i) {
    for (std::size_t j = i + 1; j < corners.size(); ++j) {
      const Point between = middle(corners[i], corners[j]);
      if (lies_in(between, one, depth) && lies_in(between, other, depth)) return between;
    }
  }
  return std::nullopt;
}

Outline thinned(const Outline& line, double chord) {
  if (line.size() < 3) return line;
  std::vector<char> kept(line.size());
  kept.front() = kept.back() = 1;
  keep(line, 0, line.size() - 1, chord, kept);
  Outline result;
  for (std::size_t k = 0; k < line.size(); ++k) {
    if (kept[k] != 0) result.push_back(line[k]);
  }
  return result;
}

}  // namespace quoin::tools
