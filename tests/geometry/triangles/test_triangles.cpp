// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <map>
#include <set>

#include "geometry/triangles/arrangement.hpp"
#include "geometry/triangles/nodes.hpp"
#include "geometry/triangles/refinement.hpp"
#include "geometry/triangles/triangles.hpp"
#include "tests/geometry/triangles/shapes.hpp"
#include "tests/support/within.hpp"

namespace quoin::geometry {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

constexpr std::size_t plenty = 200'000;

/// Triangles turned over or without area.
std::size_t turned_over(const Triangulation& net) {
  std::size_t count = 0;
  for (std::uint32_t t = 0; t < net.triangles().size(); ++t) {
    if (turn(net.corner(t, 0), net.corner(t, 1), net.corner(t, 2)) <= 0) ++count;
  }
  return count;
}

/// The corner of a triangle that another one, its neighbour, has not.
Point apex(const Triangulation& net, std::uint32_t triangle, std::uint32_t other) {
  const auto& known = net.triangles()[other].corner;
  for (const std::uint32_t corner : net.triangles()[triangle].corner) {
    if (std::find(known.begin(), known.end(), corner) == known.end()) return net.points()[corner];
  }
  return {};
}

bool circle_holds(const Triangulation& net, std::uint32_t triangle, Point place) {
  return surely_in_circle(net.corner(triangle, 0), net.corner(triangle, 1), net.corner(triangle, 2),
                          place);
}

/// Sides that are not fixed though the corner beyond lies in the circle, seen from either triangle:
/// of four points nearly on one circle one view may be doubtful.
std::size_t not_delaunay(const Triangulation& net) {
  std::size_t count = 0;
  for (std::uint32_t t = 0; t < net.triangles().size(); ++t) {
    const Triangle& one = net.triangles()[t];
    for (std::size_t k = 0; k < 3; ++k) {
      const std::uint32_t u = one.beyond[k];
      if (one.fixed[k] || u == Triangle::none) continue;
      if (circle_holds(net, t, apex(net, u, t)) && circle_holds(net, u, apex(net, t, u))) ++count;
    }
  }
  return count;
}

/// Neighbours that do not know each other, or by other corners.
std::size_t broken_links(const Triangulation& net) {
  std::size_t count = 0;
  for (std::uint32_t t = 0; t < net.triangles().size(); ++t) {
    const Triangle& one = net.triangles()[t];
    for (int k = 0; k < 3; ++k) {
      const std::uint32_t u = one.beyond[static_cast<std::size_t>(k)];
      if (u == Triangle::none) continue;
      const Triangle& two = net.triangles()[u];
      bool known = false;
      for (int m = 0; m < 3; ++m) {
        known = known ||
                (two.beyond[static_cast<std::size_t>(m)] == t &&
                 two.fixed[static_cast<std::size_t>(m)] == one.fixed[static_cast<std::size_t>(k)] &&
                 two.corner[static_cast<std::size_t>(next(m))] ==
                     one.corner[static_cast<std::size_t>(before(k))] &&
                 two.corner[static_cast<std::size_t>(before(m))] ==
                     one.corner[static_cast<std::size_t>(next(k))]);
      }
      if (!known) ++count;
    }
  }
  return count;
}

/// Sides between different fills that could be flipped away.
std::size_t loose_edges(const Triangles& triangles) {
  std::size_t count = 0;
  const auto& all = triangles.net.triangles();
  for (std::uint32_t t = 0; t < all.size(); ++t) {
    for (std::size_t k = 0; k < 3; ++k) {
      if (all[t].beyond[k] == Triangle::none) continue;
      if (triangles.fill(t) != triangles.fill(all[t].beyond[k]) && !all[t].fixed[k]) ++count;
    }
  }
  return count;
}

double area_of(const Triangles& triangles, const Fill& fill) {
  double sum = 0.0;
  for (std::uint32_t t = 0; t < triangles.net.triangles().size(); ++t) {
    if (triangles.fill(t) == fill) sum += triangles.net.area(t);
  }
  return sum;
}

void check_sound(const Triangles& triangles) {
  CHECK(turned_over(triangles.net) == 0);
  CHECK(not_delaunay(triangles.net) == 0);
  CHECK(broken_links(triangles.net) == 0);
  CHECK(loose_edges(triangles) == 0);
}

Sheet wall(double thickness = 0.3) {
  return {{SpaceId(0), rectangle(0, 1, -0.1, 0), {}},
          {SpaceId(1), rectangle(0, 1, thickness, thickness + 0.1), {}},
          {RegionId(0), rectangle(0, 1, 0, thickness), {}}};
}

}  // namespace

TEST_CASE("the turn of three points is exact where rounding would lose it") {
  const Raster raster(1.0);
  const Point a = raster.on({0.1, 0.1}), b = raster.on({0.7, 0.7});
  const Point c = raster.on({0.4, 0.4});
  CHECK(turn(a, b, c) == 0);
  CHECK(turn(a, b, {c.x, c.y + raster.unit()}) == 1);
  CHECK(turn(a, b, {c.x, c.y - raster.unit()}) == -1);
  CHECK(turn(a, c, {b.x, b.y + raster.unit()}) == 1);
}

TEST_CASE("only a place well inside a circle is surely in it") {
  CHECK(surely_in_circle({0, 0}, {1, 0}, {0, 1}, {0.5, 0.5}));
  CHECK_FALSE(surely_in_circle({0, 0}, {1, 0}, {0, 1}, {1, 1}));
  CHECK_FALSE(surely_in_circle({0, 0}, {1, 0}, {0, 1}, {1.01, 1}));
  CHECK(surely_in_circle({0, 0}, {1, 0}, {0, 1}, {0.99, 1}));
}

TEST_CASE("outlines that cross are cut where they do, and points on an edge cut it") {
  const Raster raster(2.0);
  const Arrangement cross_of_two =
      arrangement_of({rectangle(0, 1, 0.4, 0.6), rectangle(0.4, 0.6, 0, 1)}, {}, raster);
  CHECK(cross_of_two.points.size() == 12);
  CHECK(cross_of_two.edges.size() == 16);
  const Arrangement tee = arrangement_of(
      {rectangle(0, 1, 0, 0.5), {{0.2, 0.500007}, {0.6, 0.49999}, {0.4, 0.9}}}, {}, raster);
  CHECK(tee.points.size() == 7);
  CHECK(tee.edges.size() == 8);
  // Negative twin: a corner beside the edge, farther than rounding, leaves it whole.
  const Arrangement apart = arrangement_of(
      {rectangle(0, 1, 0, 0.5), {{0.2, 0.50007}, {0.6, 0.50007}, {0.4, 0.9}}}, {}, raster);
  CHECK(apart.edges.size() == 7);
}

TEST_CASE("a turned wall keeps its area and its sides in triangles") {
  for (const double angle : {0.0, 0.1, 0.4, 1.0, 2.5}) {
    Triangles triangles = triangles_of(turned(wall(), angle));
    check_sound(triangles);
    CHECK(area_of(triangles, RegionId(0)) == WithinRel{0.3, 1e-12});
    CHECK(refine(triangles, even_areas(triangles, 1e-3), plenty));
    check_sound(triangles);
    CHECK(area_of(triangles, RegionId(0)) == WithinRel{0.3, 1e-9});
    const NodedTriangles nodes = noded(triangles);
    CHECK(nodes.elements.size() >= 300);
    CHECK(nodes.elements.size() < 900);  // not far beyond what the area asks for
    double inside = 0.0, outside = 0.0, cut = 0.0;
    for (const Border& border : nodes.borders) {
      (border.space ? border.space->index == 0 ? inside : outside : cut) += border.length;
    }
    CHECK(inside == WithinRel{1.0, 1e-9});
    CHECK(outside == WithinRel{1.0, 1e-9});
    CHECK(cut == WithinRel{0.6, 1e-9});
  }
}

TEST_CASE("no triangle is larger than wanted") {
  Triangles triangles = triangles_of(turned(wall(), 0.3));
  CHECK(refine(triangles, even_areas(triangles, 5e-4), plenty));
  double largest = 0.0;
  for (std::uint32_t t = 0; t < triangles.net.triangles().size(); ++t) {
    if (triangles.is_solid(t)) largest = std::max(largest, triangles.net.area(t));
  }
  CHECK(largest <= 5e-4);
  CHECK_FALSE(refine(triangles, even_areas(triangles, 1e-6), 1000));  // stops at the limit
  CHECK(triangles.net.points().size() < 1010);
}

TEST_CASE("later areas cover earlier ones, and a band wets only what it is over") {
  Sheet sheet = wall();
  sheet.push_back({RegionId(1), rectangle(-0.05, 0.5, -0.05, 0.1), RegionId(0)});
  const Triangles triangles = triangles_of(sheet);
  check_sound(triangles);
  CHECK(area_of(triangles, RegionId(1)) == WithinRel{0.05, 1e-12});
  CHECK(area_of(triangles, RegionId(0)) == WithinRel{0.25, 1e-12});
}

TEST_CASE("two hundred random heaps of polygons are followed without a crash") {
  for (std::uint64_t seed = 0; seed < 200; ++seed) {
    Triangles triangles = triangles_of(heap(seed, 4 + seed % 25));
    check_sound(triangles);
    double all = 0.0;
    for (const Fill& fill : triangles.fills) {
      if (fill != Fill{std::monostate{}}) all += area_of(triangles, fill);
    }
    CHECK(all >= 1.56 - 1e-9);  // the square and the spaces beside it; polygons may stand out
    refine(triangles, even_areas(triangles, 2e-3), 20'000);
    check_sound(triangles);
  }
}

TEST_CASE("the same sheet gives the same triangles to the last bit") {
  Triangles one = triangles_of(heap(7, 20)), two = triangles_of(heap(7, 20));
  refine(one, even_areas(one, 1e-3), plenty);
  refine(two, even_areas(two, 1e-3), plenty);
  CHECK(one.net.points() == two.net.points());
}

TEST_CASE("wedges and thin turned layers and necks are cut with few points") {
  const double slope = std::tan(0.5 * std::numbers::pi / 180);
  Sheet wedge = {{SpaceId(0), {{-0.1, -0.1}, {1.1, -0.1}, {1.1, 0}, {0, 0}}, {}},
                 {SpaceId(1), {{0, 0}, {1, slope}, {1, 0.2}, {-0.1, 0.2}}, {}},
                 {RegionId(0), {{0, 0}, {1, 0}, {1, slope}}, {}}};
  Sheet layers = wall();
  layers.push_back({RegionId(1), rectangle(0, 1, 0, 1e-4), {}});
  Sheet neck = wall();
  neck.push_back({std::monostate{}, rectangle(0.2, 0.4996, 0.1, 0.2), {}});
  neck.push_back({std::monostate{}, rectangle(0.5004, 0.8, 0.1, 0.2), {}});
  for (const Sheet& sheet : {turned(wedge, 0.2), turned(layers, 0.4), turned(neck, 0.7)}) {
    Triangles triangles = triangles_of(sheet);
    const std::size_t least = triangles.net.points().size();
    CHECK(refine(triangles, even_areas(triangles, solid_area(triangles) / 20), plenty));
    check_sound(triangles);
    CHECK(triangles.net.points().size() > least);
    CHECK(triangles.net.points().size() < 1000);
  }
}

TEST_CASE("an arc of chords half a millimetre long keeps every chord") {
  Outline arc;
  for (int k = 0; k <= 600; ++k) {
    const double angle = std::numbers::pi * k / 600;
    arc.push_back({0.5 + 0.0955 * std::cos(angle), 0.0955 * std::sin(angle)});
  }
  Sheet sheet = wall();
  sheet.push_back({SpaceId(0), arc, {}});
  Triangles triangles = triangles_of(turned(sheet, 0.4));
  check_sound(triangles);
  CHECK(refine(triangles, even_areas(triangles, 0.015), plenty));
  check_sound(triangles);
  std::size_t faces = 0;
  for (const Border& border : noded(triangles).borders) faces += border.space ? 1 : 0;
  CHECK(faces >= 600 + 3);
  CHECK(triangles.net.points().size() < 4000);
}

TEST_CASE("pieces that touch in a point have a node each there") {
  Sheet board = {{SpaceId(0), rectangle(0, 2, -1, 0), {}},
                 {SpaceId(1), rectangle(0, 2, 2, 3), {}},
                 {RegionId(0), rectangle(0, 1, 0, 1), {}},
                 {RegionId(0), rectangle(1, 2, 1, 2), {}}};
  const NodedTriangles apart = noded(triangles_of(turned(board, 0.3)));
  CHECK(apart.pieces == 2);
  CHECK(apart.corners == 8);
  board.push_back({RegionId(0), rectangle(1, 1.5, 0.5, 1), {}});  // now they share a side
  const NodedTriangles joined = noded(triangles_of(turned(board, 0.3)));
  CHECK(joined.pieces == 1);
}

TEST_CASE("material that meets no space is left out") {
  Sheet sheet = wall();
  CHECK(noded(triangles_of(sheet)).pieces == 1);
  sheet.push_back({RegionId(0), rectangle(2, 3, 0, 1), {}});
  const NodedTriangles nodes = noded(triangles_of(sheet));
  CHECK(nodes.pieces == 1);
  CHECK(nodes.elements.size() == 2);
}

TEST_CASE("a corner is made at a place on a side and within a triangle") {
  Triangles triangles = triangles_of(turned(wall(), 0.4));
  const std::size_t known = triangles.net.points().size();
  const Point on_side = {0.25 * std::cos(0.4), 0.25 * std::sin(0.4)};
  const std::uint32_t one = corner_at(triangles, on_side);
  CHECK(one == known);
  CHECK(triangles.net.points()[one].x == WithinAbs{on_side.x, 1e-9});
  CHECK(corner_at(triangles, on_side) == one);
  check_sound(triangles);
  CHECK(area_of(triangles, RegionId(0)) == WithinRel{0.3, 1e-9});
}

}  // namespace quoin::geometry
