// SPDX-License-Identifier: Apache-2.0
#include "geometry/triangles/predicates.hpp"

#include <cmath>
#include <limits>

namespace quoin::geometry {

// 2^49 units reach to the farthest coordinate, 2^52 to the corners of any box drawn around: sums
// and differences of such multiples have at most 53 digits.
Raster::Raster(double reach) : unit_(std::ldexp(1.0, std::ilogb(std::max(reach, 1e-3)) + 1 - 49)) {}

Point Raster::on(Point place) const {
  return {std::round(place.x / unit_) * unit_, std::round(place.y / unit_) * unit_};
}

int turn(Point a, Point b, Point c) {
  // The differences are exact. Two rounded products that differ are ordered as the true ones are;
  // of two that agree the roundings, which fma tells exactly, decide.
  const double ux = b.x - a.x, uy = b.y - a.y, vx = c.x - a.x, vy = c.y - a.y;
  const double left = ux * vy, right = uy * vx;
  if (left != right) return left > right ? 1 : -1;
  const double left_rest = std::fma(ux, vy, -left), right_rest = std::fma(uy, vx, -right);
  return left_rest > right_rest ? 1 : left_rest < right_rest ? -1 : 0;
}

bool surely_in_circle(Point a, Point b, Point c, Point d) {
  const double ax = a.x - d.x, ay = a.y - d.y, bx = b.x - d.x, by = b.y - d.y;
  const double cx = c.x - d.x, cy = c.y - d.y;
  const double bc1 = bx * cy, bc2 = cx * by, ca1 = cx * ay, ca2 = ax * cy, ab1 = ax * by,
               ab2 = bx * ay;
  const double a2 = ax * ax + ay * ay, b2 = bx * bx + by * by, c2 = cx * cx + cy * cy;
  const double determinant = a2 * (bc1 - bc2) + b2 * (ca1 - ca2) + c2 * (ab1 - ab2);
  const double size = a2 * (std::abs(bc1) + std::abs(bc2)) + b2 * (std::abs(ca1) + std::abs(ca2)) +
                      c2 * (std::abs(ab1) + std::abs(ab2));
  return determinant > 12 * (std::numeric_limits<double>::epsilon() / 2) * size;
}

bool cross(Point a, Point b, Point c, Point d) {
  return turn(a, b, c) * turn(a, b, d) < 0 && turn(c, d, a) * turn(c, d, b) < 0;
}

}  // namespace quoin::geometry
