// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "geometry/sheet.hpp"

namespace quoin::tools {

using geometry::Outline;
using geometry::Point;

// Outlines are closed: the last point is joined to the first, which it does not repeat.

/// What is filled: within an outline and in none of its holes.
struct Area {
  Outline outline;
  std::vector<Outline> holes;
};

/// How far a point is from a stretch between two points, and the nearest place on it.
struct Nearest {
  double distance = 0.0;
  Point place;
};
[[nodiscard]] Nearest nearest_on(Point a, Point b, Point to);

/// Whether a point lies within an outline, off its edge or not by rounding.
[[nodiscard]] bool lies_within(Point point, const Outline& outline);

/// How far a point is from the nearest edge of an outline.
[[nodiscard]] double distance_to_edge(Point point, const Outline& outline);

/// An area without its sign.
[[nodiscard]] double area_of(const Outline& outline);

/// A place where an outline crosses itself.
[[nodiscard]] std::optional<Point> self_crossing(const Outline& outline);

/// Whether a point lies in an area, farther than `depth` from its edges.
[[nodiscard]] bool lies_in(Point point, const Area& area, double depth);

/// A place that lies in both areas by more than `depth`, as far as their corners and crossings
/// tell.
[[nodiscard]] std::optional<Point> shared_place(const Area& one, const Area& other, double depth);

/// A line without the points that lie within `chord` of what is left.
[[nodiscard]] Outline thinned(const Outline& line, double chord);

}  // namespace quoin::tools
