// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>

#include "tests/support/within.hpp"
#include "tests/tools/grids.hpp"
#include "tools/draw/field/isotherms.hpp"
#include "tools/draw/field/smoothing.hpp"

using namespace quoin;
using namespace quoin::tools;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

TEST_CASE("isotherms of a linear field are straight and lie where the field has the level") {
  const geometry::Mesh mesh = testing::square(5);
  const auto field = testing::values(mesh, [](double x, double y) { return 3 * x + 2 * y; });
  const auto found = IsothermFinder(mesh).isotherms(field, {2.5});
  REQUIRE(found.size() == 1);
  REQUIRE(found[0].lines.size() == 1);
  for (const geometry::Point p : found[0].lines[0]) {
    CHECK(3 * p.x + 2 * p.y == WithinAbs{2.5, 1e-12});  // interpolation of a linear field: rounding
  }
  // from (1/6, 1) to (5/6, 0)
  CHECK(testing::length(found[0].lines[0]) == WithinAbs{std::hypot(2.0 / 3.0, 1.0), 1e-12});
}

TEST_CASE("the warmer side of a level has the area it should have") {
  const geometry::Mesh mesh = testing::square(7);
  const auto field = testing::values(mesh, [](double x, double) { return x; });
  const auto found = IsothermFinder(mesh).isotherms(field, {0.3, 0.8});
  CHECK(testing::area(found[0].warmer) == WithinAbs{0.7, 1e-12});  // rounding
  CHECK(testing::area(found[1].warmer) == WithinAbs{0.2, 1e-12});
}

TEST_CASE("areas of the bands add up to the material, round a hole too") {
  const geometry::Mesh mesh = testing::square_with_hole();
  const auto field =
      testing::values(mesh, [](double x, double y) { return std::sin(3 * x) + std::cos(2 * y); });
  const std::vector<double> levels{-10.0, 0.4, 0.8, 1.2, 10.0};
  const auto found = IsothermFinder(mesh).isotherms(field, levels);
  CHECK(testing::area(found.front().warmer) == WithinAbs{8.0 / 9.0, 1e-12});  // all: rounding
  CHECK(found.front().lines.empty());
  CHECK(found.back().warmer.empty());
  double before = 8.0 / 9.0;
  for (std::size_t k = 1; k < levels.size(); ++k) {
    const double area = testing::area(found[k].warmer);
    CHECK(area < before);
    before = area;
  }
}

TEST_CASE("an isotherm within the material closes on itself") {
  const geometry::Mesh mesh = testing::square(40);
  const auto field =
      testing::values(mesh, [](double x, double y) { return std::hypot(x - 0.5, y - 0.5); });
  const auto found = IsothermFinder(mesh).isotherms(field, {0.3});
  REQUIRE(found[0].lines.size() == 1);
  CHECK(found[0].lines[0].front() == found[0].lines[0].back());
  // chords of a circle on a grid of 1/40: off by less than (1/40)^2 / (8 r^2) of its length each
  CHECK(testing::length(found[0].lines[0]) == WithinRel{2 * std::numbers::pi * 0.3, 1e-3});
}

TEST_CASE("no isotherm is drawn where the field never has the level") {
  const geometry::Mesh mesh = testing::square(4);
  const auto field = testing::values(mesh, [](double x, double y) { return x + y; });
  const auto found = IsothermFinder(mesh).isotherms(field, {-0.1, 2.1});
  CHECK(found[0].lines.empty());
  CHECK(found[1].lines.empty());
}

TEST_CASE("at a saddle the middle of the cell decides which sides hang together") {
  const geometry::Mesh mesh = testing::square(1);
  const std::vector<double> field{1.0, 0.0, 0.0, 1.0};  // warm corners SW and NE
  const auto split = IsothermFinder(mesh).isotherms(field, {0.6});
  CHECK(split[0].warmer.size() == 2);
  CHECK(testing::area(split[0].warmer) == WithinAbs{2 * 0.4 * 0.4 / 2, 1e-12});  // rounding
  const auto joined = IsothermFinder(mesh).isotherms(field, {0.4});
  CHECK(joined[0].warmer.size() == 1);
  CHECK(testing::area(joined[0].warmer) == WithinAbs{1 - 2 * 0.4 * 0.4 / 2, 1e-12});
}

TEST_CASE("sloping edges bound the warmer area") {
  geometry::Mesh mesh = testing::square(1);
  mesh.section.cells[0] = {geometry::RegionId(0u), geometry::SpaceId(0u), geometry::Split::rising};
  const auto field = testing::values(mesh, [](double x, double) { return x; });
  const auto found = IsothermFinder(mesh).isotherms(field, {-1.0, 0.5});
  CHECK(testing::area(found[0].warmer) == WithinAbs{0.5, 1e-12});
  CHECK(testing::area(found[1].warmer) == WithinAbs{0.375, 1e-12});
  REQUIRE(found[1].lines.size() == 1);
  CHECK(testing::length(found[1].lines[0]) == WithinAbs{0.5, 1e-12});
}

TEST_CASE("round levels are few, round and strictly inside") {
  CHECK(round_levels(1.0, 18.5, 11) == std::vector<double>{2, 4, 6, 8, 10, 12, 14, 16, 18});
  CHECK(round_levels(0.0, 20.0, 4) == std::vector<double>{5, 10, 15});
  CHECK(round_levels(-5.0, 5.0, 1) == std::vector<double>{0});
  CHECK(round_levels(3.0, 3.0, 5).empty());
  CHECK(round_levels(5.0, 3.0, 5).empty());
}

TEST_CASE("a simplified line keeps its corners and strays no further than allowed") {
  geometry::Outline line;
  for (int k = 0; k <= 100; ++k) line.push_back({k / 100.0, k < 50 ? 0.0 : k / 100.0 - 0.5});
  const geometry::Outline simple = simplified(line, 1e-6);
  CHECK(simple.size() == 3);
  CHECK(simple[1].x == WithinAbs{0.5, 0.011});  // to one step of the line
  CHECK(simplified(line, 10.0).size() == 2);
}

TEST_CASE("a finer field keeps the values at the nodes and overshoots nowhere") {
  const geometry::Mesh mesh = testing::square(6);
  const auto field =
      testing::values(mesh, [](double x, double y) { return x < 0.5 ? 0.0 : 1.0 + y; });
  const FineField fine = refined(mesh, field, 0.02);
  CHECK(fine.mesh.nx() > 40);
  for (std::size_t n = 0; n < field.size(); ++n) {
    const geometry::Point p = mesh.place(n);
    const auto i = std::find(fine.mesh.x.begin(), fine.mesh.x.end(), p.x) - fine.mesh.x.begin();
    const auto j = std::find(fine.mesh.y.begin(), fine.mesh.y.end(), p.y) - fine.mesh.y.begin();
    CHECK(fine.values[fine.mesh.node(static_cast<std::size_t>(i), static_cast<std::size_t>(j))] ==
          field[n]);
  }
  for (const double value : fine.values) {
    CHECK(value >= 0.0);
    CHECK(value <= 2.0 + 1e-12);  // rounding
  }
}

TEST_CASE("a finer field is much nearer to a smooth one than straight lines between nodes") {
  const geometry::Mesh mesh = testing::square(8);
  const auto smooth = [](double x, double y) { return std::exp(x) * std::cos(y); };
  const FineField fine = refined(mesh, testing::values(mesh, smooth), 0.02);
  double worst = 0.0;
  for (std::size_t n = 0; n < fine.values.size(); ++n) {
    const geometry::Point p = fine.mesh.place(n);
    worst = std::max(worst, std::abs(fine.values[n] - smooth(p.x, p.y)));
  }
  const double straight = std::exp(1.0) / 8.0 / 64.0;  // e h^2 / 8, the error of a chord
  CHECK(worst < straight / 5.0);
}

TEST_CASE("a bend of the field at the face of a material stays a bend") {
  const geometry::Mesh mesh = testing::two_layers();
  const auto bent = [](double x, double) { return x < 0.5 ? x : 0.5 + 10.0 * (x - 0.5); };
  const FineField fine = refined(mesh, testing::values(mesh, bent), 0.02);
  for (std::size_t n = 0; n < fine.values.size(); ++n) {
    CHECK(fine.values[n] == WithinAbs{bent(fine.mesh.place(n).x, 0.0), 1e-12});  // rounding
  }
}

}  // namespace
