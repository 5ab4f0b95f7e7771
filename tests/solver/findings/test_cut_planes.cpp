// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "solver/findings/cut_planes.hpp"
#include "tests/geometry/triangles/shapes.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::Problem;
using testing::WithinAbs;

std::vector<CutPlane> planes_of(const Problem& problem, double density, geometry::Point coldest) {
  return cut_planes(problem.field(density), problem.physics(), coldest);
}

/// The cut planes of a problem turned about the origin, whose slopes no grid follows.
std::vector<CutPlane> turned_planes(const Problem& problem, double angle, geometry::Point coldest) {
  const geometry::Sheet sheet = geometry::turned(problem.sheet(), angle);
  const Solution solution = solution_of({geometry::section_of(sheet),
                                         problem.physics(),
                                         problem.temperatures(),
                                         {SpaceId(0)},
                                         SpaceId(1),
                                         {},
                                         1e-3,
                                         1e-3,
                                         sheet},
                                        {});
  REQUIRE(solution.triangles.has_value());
  return cut_planes(*solution.triangles, solution.field.airs, solution.physics,
                    geometry::turned(geometry::Outline{coldest}, angle).front());
}

}  // namespace

TEST_CASE("cut planes at an angle are those of the section upright") {
  const Problem wall = testing::layered_wall({{0.1, 0.04}, {0.3, 0.8}});
  const std::vector<CutPlane> ends = turned_planes(wall, 0.3, {0, 0.2});
  REQUIRE(ends.size() == 2);
  for (const CutPlane& plane : ends) {
    CHECK(plane.departure < 1e-6);  // exact but for the raster of 0.01 mm
    CHECK(std::hypot(plane.to.x - plane.from.x, plane.to.y - plane.from.y) == WithinAbs{0.4, 2e-5});
  }
  CHECK(ends[0].distance + ends[1].distance == WithinAbs{1.0, 2e-5});
  for (const double leg : {1.0, 0.15}) {
    const Problem corner = testing::external_corner(0.3, 0.75, 0.13, 0.04, leg);
    const std::vector<CutPlane> planes = turned_planes(corner, 0.3, {0.3, 0.3});
    REQUIRE(planes.size() == 2);
    const double upright = planes_of(corner, 12, {0.3, 0.3}).front().departure;
    for (const CutPlane& plane : planes) {
      CHECK(plane.distance == WithinAbs{leg, 2e-5});
      CHECK(plane.departure == WithinAbs{upright, 2e-3});  // of that grid
    }
  }
}

TEST_CASE("a plane of symmetry through an angle cuts no plane wall") {
  Problem half;  // of a wall 0.3 m thick that turns by a right angle, its legs 1 m
  half.space(20, 0.13);
  half.space(0, 0.04);
  half.paint(half.material(0.75), geometry::Outline{{0, 0}, {1.3, 0}, {1.3, 0.3}, {0.3, 0.3}});
  half.paint(SpaceId(0), geometry::Outline{{0.3, 0.3}, {1.3, 0.3}, {1.3, 0.4}, {0.4, 0.4}});
  half.paint(SpaceId(1), 0, 1.3, -0.1, 0);
  const std::vector<CutPlane> planes = turned_planes(half, 0.3, {0.3, 0.3});
  REQUIRE(planes.size() == 2);
  const auto plain = std::count_if(planes.begin(), planes.end(), [](const CutPlane& plane) {
    return plane.departure < 2e-3;  // as that of a whole corner with legs of 1 m
  });
  CHECK(plain == 1);
  CHECK((std::isnan(planes[0].departure) || std::isnan(planes[1].departure)));
}

TEST_CASE("both ends of a plain wall are cut planes on which the field is one-dimensional") {
  const Problem problem = testing::layered_wall({{0.1, 0.04}, {0.3, 0.8}});
  const std::vector<CutPlane> planes = planes_of(problem, 5, {0, 0.2});
  REQUIRE(planes.size() == 2);
  for (const CutPlane& plane : planes) {
    CHECK(plane.departure < 1e-12);  // of rounding
    CHECK(std::abs(plane.to.x - plane.from.x) == WithinAbs{0.4, 1e-12});
  }
  CHECK(planes[0].distance + planes[1].distance == WithinAbs{1.0, 1e-12});
}

TEST_CASE("a far cut plane of a corner is one-dimensional, a near one is not") {
  const auto departure = [](double leg) {
    const Problem problem = testing::external_corner(0.3, 0.75, 0.13, 0.04, leg);
    const std::vector<CutPlane> planes = planes_of(problem, 12, {0.3, 0.3});
    REQUIRE(planes.size() == 2);
    for (const CutPlane& plane : planes) CHECK(plane.distance == WithinAbs{leg, 1e-12});
    return std::max(planes[0].departure, planes[1].departure);
  };
  CHECK(departure(1.5) < 1e-4);
  CHECK(departure(1.0) < 2e-3);
  CHECK(departure(0.15) > 0.02);
}

TEST_CASE("a corner's disturbance dies away along its legs") {
  double former = 1.0;
  for (const double leg : {0.2, 0.5, 0.8, 1.1}) {
    const Problem problem = testing::external_corner(0.3, 0.75, 0.13, 0.04, leg);
    const double departure = planes_of(problem, 12, {0.3, 0.3}).front().departure;
    CHECK(departure < former / 2);
    former = departure;
  }
}

TEST_CASE("a cut plane that does not end on air at both ends has no plane wall to compare with") {
  Problem problem;
  const SpaceId room = problem.space(20, 0.13);
  problem.paint(problem.material(0.8), 0, 1, 0, 0.3);
  problem.paint(room, 0, 1, 0.3, 0.4);
  const SpaceId yard = problem.space(0, 0.04);
  problem.paint(yard, -0.1, 0, 0, 0.15);
  const std::vector<CutPlane> planes = planes_of(problem, 4, {1, 0.3});
  const bool any = std::any_of(planes.begin(), planes.end(),
                               [](const CutPlane& plane) { return std::isnan(plane.departure); });
  CHECK(any);
}

}  // namespace quoin::solver
