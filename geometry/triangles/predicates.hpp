// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/sheet.hpp"

namespace quoin::geometry {

/// A raster so fine (below 1e-11 m for a section of 10 m) that no drawing notices it, and so coarse
/// that the difference of any two of its coordinates is a double without rounding. Whoever keeps
/// points on it can ask for signs of areas and get them exactly.
class Raster {
 public:
  /// For coordinates up to this far from the origin, m, and what lies around them.
  explicit Raster(double reach);

  [[nodiscard]] Point on(Point place) const;
  [[nodiscard]] double unit() const { return unit_; }  ///< m, a power of two

 private:
  double unit_;
};

/// Which way the path a, b, c turns: 1 left, -1 right, 0 straight on. Exact for points of one
/// raster.
[[nodiscard]] int turn(Point a, Point b, Point c);

/// Whether d lies inside the circle through a, b, c (counter-clockwise) beyond any doubt of
/// rounding. Where it is doubtful the answer is no, so that whoever flips edges on a yes comes to
/// an end. Source: the error bound of Shewchuk (Discrete & Computational Geometry 18, 1997;
/// memory).
[[nodiscard]] bool surely_in_circle(Point a, Point b, Point c, Point d);

/// Whether the segments ab and cd cross in a point inside both. Exact as `turn`.
[[nodiscard]] bool cross(Point a, Point b, Point c, Point d);

}  // namespace quoin::geometry
