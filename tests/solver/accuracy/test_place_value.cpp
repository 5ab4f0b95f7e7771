// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <optional>
#include <vector>

#include "solver/accuracy/place_value.hpp"
#include "tests/laws/random_section.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::Problem;
using testing::WithinAbs;

/// A corner of brick, 300 mm, warm in the angle at (0.3, 0.3).
Problem corner() {
  Problem problem;
  const SpaceId room = problem.space(1, 0.13), outside = problem.space(0, 0.04);
  problem.paint(outside, -0.1, 1.3, -0.1, 1.3);
  problem.paint(problem.material(0.75), 0, 1.3, 0, 1.3);
  problem.paint(room, 0.3, 1.3, 0.3, 1.3);
  return problem;
}

TwoSided value_at(geometry::Point place, int doublings) {
  const Problem problem = corner();
  const BothSchemes both = both_schemes(problem.mesh(8, doublings), problem.physics(), {});
  const BothTemperatures temperatures(both, problem.physics(), problem.temperatures());
  return place_value(both, problem.physics(), temperatures, place).value;
}

double median(std::vector<double> values) {
  std::nth_element(values.begin(), values.begin() + values.size() / 2, values.end());
  return values[values.size() / 2];
}

}  // namespace

TEST_CASE("the middle of both schemes is nearer to the truth than the nodes, as a rule") {
  std::vector<double> of_nodes, of_middle, of_mirror;
  for (std::uint64_t seed = 1; seed <= 40; ++seed) {
    const Problem problem = testing::random_section(seed);
    // Grids as they are refined for the coldest spot, as that is where the middle is made use of.
    const Solution solution = problem.solution({SpaceId(0)}, SpaceId(1), 0.004, std::nullopt);
    const geometry::Point place = solution.airs.front().coldest.place;
    const auto value_on = [&](const geometry::Subdivision& grid) {
      const BothSchemes both =
          both_schemes(geometry::mesh_of(problem.section(), grid), problem.physics(), {});
      const BothTemperatures temperatures(both, problem.physics(), problem.temperatures());
      return place_value(both, problem.physics(), temperatures, place).value;
    };
    const TwoSided value = value_on(solution.subdivision);
    const TwoSided fine = value_on(geometry::doubled(geometry::doubled(solution.subdivision)));
    const double truth = fine.value + fine.lacks;
    CHECK(std::abs(value.lacks) <= value.gap);
    CHECK(fine.gap < value.gap);
    of_nodes.push_back(std::abs(value.value - truth));
    of_middle.push_back(std::abs(value.value + value.lacks - truth));
    of_mirror.push_back(std::abs(value.value - value.lacks - truth));
  }
  MESSAGE("median error of the nodes " << median(of_nodes) << " K, of the middle "
                                       << median(of_middle) << " K");
  CHECK(median(of_middle) < 0.5 * median(of_nodes));
  CHECK(median(of_mirror) > median(of_nodes));  // the other way it gets worse
}

TEST_CASE("in a re-entrant corner the band from both schemes and two grids holds the truth") {
  constexpr double truth = 0.62146;  // T7, by two independent discretisations that bracket it
  TwoSided coarse = value_at({0.3, 0.3}, 0);
  for (const int doublings : {1, 2, 3}) {
    const TwoSided fine = value_at({0.3, 0.3}, doublings);
    const Estimate estimate = estimate_of(coarse, fine);
    CHECK(estimate.asymptotic);
    CHECK(std::abs(estimate.value - truth) <= estimate.band + 5e-6);  // known to five decimals
    coarse = fine;
  }
}

TEST_CASE("in a plane wall both schemes agree and nothing is lacking") {
  const Problem problem = testing::layered_wall({{0.015, 0.8}, {0.33, 0.77}, {0.1, 0.04}});
  const BothSchemes both = both_schemes(problem.mesh(8), problem.physics(), {});
  const BothTemperatures temperatures(both, problem.physics(), problem.temperatures());
  const PlaceValue at = place_value(both, problem.physics(), temperatures, {0.015, 0.4});
  CHECK(at.value.lacks == WithinAbs{0.0, 1e-10});  // rounding of the solves
}

TEST_CASE("a place of fixed temperature lacks nothing and asks for no finer grid") {
  Problem problem;
  const SpaceId warm = problem.space(20, 0.0), cold = problem.space(0, 0.0);
  problem.paint(problem.material(1.0), 0, 1, 0, 1);
  problem.paint(warm, 0, 1, 1, 1.1);
  problem.paint(cold, -0.1, 0, 0, 1);
  const BothSchemes both = both_schemes(problem.mesh(8), problem.physics(), {});
  const BothTemperatures temperatures(both, problem.physics(), problem.temperatures());
  const PlaceValue at = place_value(both, problem.physics(), temperatures, {0, 1});
  CHECK(at.value.value == 10.0);  // where two of them meet, their mean
  CHECK(at.value.lacks == 0.0);
  CHECK(total(at.blame) == 0.0);
}

TEST_CASE("a place between nodes is read between them, with the gap of a node beside it") {
  const Problem problem = corner();
  const BothSchemes both = both_schemes(problem.mesh(8, 1), problem.physics(), {});
  const BothTemperatures temperatures(both, problem.physics(), problem.temperatures());
  const geometry::Mesh& mesh = both.field.mesh;
  std::size_t i = 0;
  while (mesh.x[i] < 0.5) ++i;
  const geometry::Point between{(mesh.x[i] + mesh.x[i + 1]) / 2, 0.3};
  const PlaceValue at = place_value(both, problem.physics(), temperatures, between);
  CHECK(at.value.value == temperature_at(both.field, temperatures.nodes(), between));
  CHECK(at.value.gap > 0.0);
}

}  // namespace quoin::solver
