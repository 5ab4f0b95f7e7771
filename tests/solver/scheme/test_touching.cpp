// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cstddef>
#include <optional>

#include "solver/findings/stream.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

// Wedges of material that touch in one point alone: no heat passes there, so that each is as it is
// by itself. A wedge alone is the reference, on the same lines.

namespace quoin::solver {
namespace {

using testing::Problem;
using testing::WithinAbs;
using testing::WithinRel;

const SpaceId room{0}, outside{1};

/// Which squares are painted.
struct Squares {
  bool lower_left = true;
  bool upper_right = true;
  double overlap = 0.0;  ///< m, by which the squares share more than a point
};

/// Squares of 0.2 m that touch in (0.2, 0.2); the room lies to the upper left of that point,
/// outside to the lower right.
Problem problem_of(const Squares& squares, double conductivity, double resistance) {
  Problem problem;
  problem.space(20, resistance);
  problem.space(0, resistance / 2);
  const RegionId one = problem.material(0.8), other = problem.material(conductivity);
  problem.paint(room, 0, 0.2, 0.2, 0.4);
  problem.paint(outside, 0.2, 0.4, 0, 0.2);
  if (squares.lower_left) problem.paint(one, 0, 0.2 + squares.overlap, 0, 0.2 + squares.overlap);
  if (squares.upper_right) problem.paint(other, 0.2, 0.4, 0.2, 0.4);
  return problem;
}

Coupling coupling_of(const Squares& squares, double resistance) {
  return problem_of(squares, 2.5, resistance).couplings(8, 2).front();
}

}  // namespace

TEST_CASE("squares that touch in a point conduct as much as each of them alone") {
  const Coupling both = coupling_of({}, 0.1);
  const Coupling one = coupling_of({true, false}, 0.1), other = coupling_of({false, true}, 0.1);
  // 1e-9: rounding of the solves. The lines are the same, so the bounds are.
  CHECK(both.high == WithinRel{one.high + other.high, 1e-9});
  CHECK(both.low == WithinRel{one.low + other.low, 1e-9});
  // Sharing an edge of 10 mm they conduct otherwise.
  CHECK_FALSE(coupling_of({true, true, 0.01}, 0.1).high == WithinRel{one.high + other.high, 1e-3});
}

TEST_CASE("each of the squares that touch in a point has its own coldest spot there") {
  const auto coldest = [](const Squares& squares) {
    const Solution solution =
        problem_of(squares, 2.5, 0.1).solution({room}, outside, 0.002, std::nullopt);
    CHECK(solution.accurate);
    return solution.airs.front().coldest;
  };
  const Spot both = coldest({}), one = coldest({true, false}), other = coldest({false, true});
  const Spot& colder = one.temperature.value < other.temperature.value ? one : other;
  const Spot& warmer = one.temperature.value < other.temperature.value ? other : one;
  REQUIRE(warmer.temperature.value - colder.temperature.value > 0.1);  // K, beyond both bands
  CHECK(both.temperature.value ==
        WithinAbs{colder.temperature.value, both.temperature.band + colder.temperature.band});
  CHECK(both.place == geometry::Point{0.2, 0.2});
}

TEST_CASE("the field beside a point of contact is that of the square it is read in") {
  const Field both = problem_of({}, 2.5, 0.1).field(8, 2);
  const Field alone = problem_of({true, false}, 2.5, 0.1).field(8, 2);
  CHECK(both.mesh.nodes() == both.mesh.nx() * both.mesh.ny() + 1);
  CHECK(alone.mesh.nodes() == alone.mesh.nx() * alone.mesh.ny());
  for (const double at : {0.05, 0.15, 0.199, 0.19999}) {
    CHECK(temperature_at(both, both.basis[0], {at, at}) ==
          WithinAbs{temperature_at(alone, alone.basis[0], {at, at}), 1e-9});
  }
}

TEST_CASE("airs without resistance that meet in a point over two squares touch in each") {
  const Field field = problem_of({}, 2.5, 0.0).field(8);
  CHECK(field.touching.size() == 1);
  const Field alone = problem_of({true, false}, 2.5, 0.0).field(8);
  const Field other = problem_of({false, true}, 2.5, 0.0).field(8);
  CHECK(field.coupling[1] == WithinRel{alone.coupling[1] + other.coupling[1], 1e-9});
}

TEST_CASE("wedges between sloping edges that touch in a point conduct as each alone") {
  const auto high = [](bool left, bool right) {
    Problem problem;
    problem.space(20, 0.1);
    problem.space(0, 0.05);
    const RegionId wall = problem.material(0.8);
    problem.paint(room, geometry::Outline{{-0.2, 0.2}, {0, 0}, {0.2, 0.2}});
    problem.paint(outside, geometry::Outline{{-0.2, -0.2}, {0.2, -0.2}, {0, 0}});
    if (left) problem.paint(wall, geometry::Outline{{-0.2, -0.2}, {0, 0}, {-0.2, 0.2}});
    if (right) problem.paint(wall, geometry::Outline{{0.2, -0.2}, {0.2, 0.2}, {0, 0}});
    return problem.couplings(8, 1).front().high;
  };
  CHECK(high(true, true) == WithinRel{2 * high(true, false), 1e-9});
  CHECK(high(false, true) == WithinRel{high(true, false), 1e-9});  // and each as its mirror image
}

}  // namespace quoin::solver
