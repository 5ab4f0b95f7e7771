// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <vector>

#include "solver/findings/cut_planes.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::Problem;
using testing::WithinAbs;

std::vector<CutPlane> planes_of(const Problem& problem, double density, geometry::Point coldest) {
  return cut_planes(problem.field(density), problem.physics(), coldest);
}

}  // namespace

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
