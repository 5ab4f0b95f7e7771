// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::Problem;
using testing::WithinAbs;
using testing::WithinRel;

/// A wall corner whose outside is half yard, half porch, with a cupboard in the angle that is like
/// the room.
Problem three_airs() {
  Problem problem;
  const SpaceId room = problem.space(20, 0.13), yard = problem.space(0, 0.04),
                porch = problem.space(7, 0.13), cupboard = problem.space(20, 0.5, room);
  const RegionId brick = problem.material(0.77), board = problem.material(0.04);
  problem.paint(yard, -0.1, 1.3, -0.1, 1.3);
  problem.paint(porch, -0.1, 0, 0.4, 1.3);
  problem.paint(brick, 0, 1.3, 0, 1.3);
  problem.paint(board, 0.27, 1.3, 0.27, 1.3);
  problem.paint(room, 0.3, 1.3, 0.3, 1.3);
  problem.paint(cupboard, 0.3, 0.7, 0.3, 0.7);
  return problem;
}

}  // namespace

TEST_CASE("each pair of airs has one coupling between its bounds, its value the middle") {
  const std::vector<Coupling> all = three_airs().couplings(8);
  REQUIRE(all.size() == 3);
  for (const Coupling& one : all) {
    CHECK(one.a < one.b);
    CHECK(one.low > 0.0);
    CHECK(one.low < one.high);
    CHECK(one.value == WithinRel{(one.low + one.high) / 2, 1e-15});
  }
}

TEST_CASE("brackets of three airs on all grids have a value in common and shrink") {
  std::vector<Coupling> former = three_airs().couplings(4);
  for (const double density : {8.0, 16.0, 32.0}) {
    const std::vector<Coupling> now = three_airs().couplings(density);
    for (std::size_t k = 0; k < now.size(); ++k) {
      CHECK(now[k].low <= former[k].high);
      CHECK(former[k].low <= now[k].high);
      CHECK(now[k].high - now[k].low < 0.7 * (former[k].high - former[k].low));
    }
    former = now;
  }
}

TEST_CASE("airs that touch without resistance have an infinite coupling and a finite low") {
  Problem problem;
  const SpaceId warm = problem.space(20, 0.0), cold = problem.space(0, 0.0);
  problem.paint(problem.material(1.0), 0, 1, 0, 1);
  problem.paint(warm, 0, 1, 1, 1.1);
  problem.paint(cold, -0.1, 0, 0, 1);
  const Coupling coarse = problem.couplings(4).front();
  const Coupling fine = problem.couplings(16).front();
  CHECK(std::isinf(coarse.high));
  CHECK(std::isinf(coarse.value));
  CHECK(std::isfinite(coarse.low));
  CHECK(fine.low > coarse.low);  // it grows without end, as the logarithm of the cells
}

TEST_CASE("airs without a way between them have no coupling, proved") {
  Problem problem = testing::layered_wall({{0.3, 0.8}});
  problem.paint(std::monostate{}, 0.1, 0.2, 0, 1);
  const Coupling none = problem.couplings(4).front();
  CHECK(none.low >= 0.0);
  CHECK(none.high >= none.low);
  CHECK(none.high == WithinAbs{0, 1e-11});  // rounding of solves with conductances near 10
}

TEST_CASE("flows into the section are the couplings times the differences of temperature") {
  const Problem problem = three_airs();
  const Field field = problem.field(8);
  const auto flow = flows(field, problem.temperatures());
  const auto between = [&](std::size_t a, std::size_t b) { return field.coupling[a * 3 + b]; };
  const double yard = between(1, 0) * (0 - 20) + between(1, 2) * (0 - 7);
  CHECK(flow[SpaceId(1)] == WithinRel{yard, 1e-10});
  const double room = between(0, 1) * 20 + between(0, 2) * (20 - 7);
  CHECK(flow[SpaceId(0)] + flow[SpaceId(3)] == WithinRel{room, 1e-10});
  CHECK(flow[SpaceId(3)] > 0.0);  // the cupboard is like the room but has a flow of its own
}

}  // namespace quoin::solver
