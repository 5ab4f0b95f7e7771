// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <vector>

#include "geometry/triangles/predicates.hpp"

namespace quoin::geometry {

/// One triangle of a triangulation. Side k lies opposite corner k, from corner k + 1 to corner
/// k + 2 (counted round), the triangle on its left.
struct Triangle {
  static constexpr std::uint32_t none = 0xffffffff;
  std::array<std::uint32_t, 3> corner{};  ///< counter-clockwise
  std::array<std::uint32_t, 3> beyond{};  ///< the neighbour across each side; none: the rim
  std::array<bool, 3> fixed{};            ///< whether a side must stay
  std::uint32_t part = 0;                 ///< which part of the drawing it belongs to
  std::uint32_t origin = 0;               ///< where in an older triangulation to look first
};

[[nodiscard]] constexpr int next(int k) { return k == 2 ? 0 : k + 1; }
[[nodiscard]] constexpr int before(int k) { return k == 0 ? 2 : k - 1; }

/// One side of one triangle.
struct Side {
  std::uint32_t triangle = Triangle::none;
  int k = 0;
};

/// A constrained Delaunay triangulation of a box that grows point by point: no point lies inside
/// the circle around a triangle, unless a fixed side hides it. Points lie on one raster, so that no
/// triangle is ever turned over, however flat. Source: Lawson's flips; edges laid by flipping after
/// Sloan (Advances in Engineering Software 9, 1987; memory).
class Triangulation {
 public:
  /// Two triangles that fill the box between two opposite corners.
  Triangulation(Point low, Point high, const Raster& raster);

  [[nodiscard]] const std::vector<Point>& points() const { return points_; }
  [[nodiscard]] const std::vector<Triangle>& triangles() const { return triangles_; }
  [[nodiscard]] std::vector<Triangle>& triangles() { return triangles_; }
  [[nodiscard]] Point corner(std::uint32_t triangle, int k) const {
    return points_[triangles_[triangle].corner[static_cast<std::size_t>(k)]];
  }
  [[nodiscard]] Point middle(std::uint32_t triangle) const;  ///< centre of gravity
  [[nodiscard]] double area(std::uint32_t triangle) const;   ///< m2
  [[nodiscard]] double length(Side side) const;              ///< m

  /// The triangle that holds a place of the box, walking from `start`; with `stop_at_fixed` the
  /// first fixed side in the way instead, if there is one.
  struct Found {
    std::uint32_t triangle = Triangle::none;
    std::optional<Side> fixed;
  };
  [[nodiscard]] Found find(Point place, std::uint32_t start, bool stop_at_fixed) const;

  /// Puts a point into the box, in the triangle that holds it or on its side; the number of the
  /// point, which is an old one where there is one at the place.
  std::uint32_t insert(Point place, std::uint32_t start);

  /// Cuts a side at a place beside which no triangle turns over; none where one would.
  std::optional<std::uint32_t> split(Side side, Point place);

  /// Makes the line between two points sides that must stay; points on it cut it. No fixed side may
  /// cross it. Throws: std::logic_error.
  void fix(std::uint32_t from, std::uint32_t to);

  /// Lets go fixed sides between triangles of one part.
  void free_inner_sides();

  /// The triangles around a point that is not on the rim.
  [[nodiscard]] std::vector<std::uint32_t> around(std::uint32_t point) const;

 private:
  void insert_into(std::uint32_t triangle, std::uint32_t point);
  void split_at(Side side, std::uint32_t point);
  void flip(Side side);
  void legalise(std::vector<Side> sides);
  void relink(std::uint32_t triangle, std::uint32_t from, std::uint32_t to);
  [[nodiscard]] Side twin(Side side) const;
  [[nodiscard]] std::optional<Side> side_between(std::uint32_t from, std::uint32_t to) const;
  [[nodiscard]] bool is_convex(Side side) const;
  void fix_piece(std::uint32_t from, std::uint32_t to, std::vector<Side> crossed);

  Raster raster_;
  std::vector<Point> points_;
  std::vector<Triangle> triangles_;
  std::vector<std::uint32_t> at_;  ///< some triangle at each point
};

}  // namespace quoin::geometry
