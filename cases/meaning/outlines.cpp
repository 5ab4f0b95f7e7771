// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/outlines.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "cases/grammar/units.hpp"
#include "geometry/section.hpp"

namespace quoin::cases {
namespace {

using geometry::Outline;
using geometry::Point;

constexpr double thinnest = 1e-4;   // m
constexpr double rounding = 1e-10;  // m, of the difference of two coordinates

std::string shown(Point place) {
  return fmt::format("[{}, {}]", bare_number(place.x, Measure::length),
                     bare_number(place.y, Measure::length));
}

/// Twice the area to the left of the way from a to b as seen from c; positive: c lies left.
double turn(Point a, Point b, Point c) {
  return (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
}

bool between(Point a, Point b, Point c) {
  return std::min(a.x, b.x) <= c.x && c.x <= std::max(a.x, b.x) && std::min(a.y, b.y) <= c.y &&
         c.y <= std::max(a.y, b.y);
}

/// Whether two edges share a point.
bool meet(Point a, Point b, Point c, Point d) {
  const double c_side = turn(a, b, c), d_side = turn(a, b, d);
  const double a_side = turn(c, d, a), b_side = turn(c, d, b);
  if (((c_side > 0) != (d_side > 0)) && ((a_side > 0) != (b_side > 0)) && c_side != 0 &&
      d_side != 0 && a_side != 0 && b_side != 0)
    return true;
  return (c_side == 0 && between(a, b, c)) || (d_side == 0 && between(a, b, d)) ||
         (a_side == 0 && between(c, d, a)) || (b_side == 0 && between(c, d, b));
}

/// The first edge that meets an edge other than its neighbours, or turns back on one.
std::optional<std::size_t> crossing(const Outline& outline) {
  const std::size_t count = outline.size();
  const auto corner = [&](std::size_t i) { return outline[i % count]; };
  for (std::size_t i = 0; i < count; ++i) {
    if (turn(corner(i), corner(i + 1), corner(i + 2)) == 0 &&
        !between(corner(i), corner(i + 2), corner(i + 1)))
      return i;
    for (std::size_t j = i + 2; j < count; ++j) {
      if (i == 0 && j == count - 1) continue;
      if (meet(corner(i), corner(i + 1), corner(j), corner(j + 1))) return j;
    }
  }
  return std::nullopt;
}

std::optional<Outline> polygon_of(Outline outline, const Node& corners, FaultList& faults) {
  if (outline.size() > most_corners) {
    faults.add(corners.mark,
               {"the outline has too many corners", fmt::format("{} corners", outline.size()),
                fmt::format("at most {}", most_corners), "split the area"});
    return std::nullopt;
  }
  if (outline.front() == outline.back()) outline.pop_back();  // closed twice
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point next = outline[(i + 1) % outline.size()];
    if (std::hypot(next.x - outline[i].x, next.y - outline[i].y) < geometry::snap) {
      faults.add(corners.items[i].mark,
                 {"two corners in a row are the same place", shown(outline[i]),
                  "an edge between corners", "remove one of them"});
      return std::nullopt;
    }
  }
  if (const auto edge = crossing(outline)) {
    faults.add(corners.items[*edge].mark,
               {"the outline crosses or touches itself here", shown(outline[*edge]),
                "corners in order around the area", "split the area in two"});
    return std::nullopt;
  }
  return outline;
}

}  // namespace

std::optional<Outline> outline_of(const WrittenPatch& patch, const Node& node, FaultList& faults) {
  const Entry* x = node.find("x");
  const Entry* y = node.find("y");
  const Entry* outline = node.find("outline");
  if (outline != nullptr && (x != nullptr || y != nullptr)) {
    faults.add(outline->mark,
               {"an area has either an outline or x and y", "both", "one of them", ""});
    return std::nullopt;
  }
  if (outline != nullptr) {
    if (!patch.outline) return std::nullopt;
    return polygon_of(*patch.outline, outline->value, faults);
  }
  if (x == nullptr || y == nullptr) {
    faults.add(node.mark,
               {fmt::format("'{}' is missing in a painted area", x == nullptr ? "x" : "y"), "",
                "x: [from, to] and y: [from, to], or outline: [[x, y], ...]", ""});
    return std::nullopt;
  }
  if (!patch.x || !patch.y) return std::nullopt;
  for (const auto& [interval, entry] : {std::pair(*patch.x, x), std::pair(*patch.y, y)}) {
    const double width = interval.to - interval.from;
    if (width < thinnest - rounding) {
      // With digits enough to be seen to differ from what is expected.
      faults.add(entry->value.mark,
                 {"the area is too thin to be seen", fmt::format("{:.6g} mm", 1000 * width),
                  "at least 0.1 mm", "metres typed where mm are meant?"});
      return std::nullopt;
    }
  }
  return geometry::rectangle(patch.x->from, patch.x->to, patch.y->from, patch.y->to);
}

}  // namespace quoin::cases
