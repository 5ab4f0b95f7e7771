// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "solver/grids/solution_on_grids.hpp"
#include "solver/solution.hpp"
#include "solver/triangles/beside_grids.hpp"
#include "tests/laws/random_section.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

using solver::AirSurface;
using solver::Question;
using solver::Solution;

const SpaceId room(0), outside(1);

Question question_of(const Problem& problem, std::optional<double> factor,
                     std::optional<double> coupling = {}) {
  return {problem.section(), problem.physics(), problem.temperatures(), {room}, outside, {}, factor,
          coupling,          problem.sheet()};
}

/// Solved on grids, the thermometer proved.
Solution proved(const Problem& problem, double factor,
                const std::vector<solver::RoomLimit>& limits = {}) {
  const Question question = question_of(problem, factor);
  Solution solution = solver::solution_of(question, {});
  solver::prove_thermometers(question, {}, limits, solution);
  return solution;
}

/// The coldest mean over 10 mm on a grid that is far finer than the default one.
double finer_mean(const Problem& problem) {
  const Solution fine = solver::solution_of(question_of(problem, 5e-5), {});
  double coldest = fine.airs.front().coldest.thermometer;
  for (const solver::Spot& spot : fine.airs.front().cold_spots)
    coldest = std::min(coldest, spot.thermometer);
  return coldest;
}

double half_width(const AirSurface& air) {
  return (air.thermometer->high - air.thermometer->low) / 2;
}

bool all_hold(const Solution& solution) {
  return std::all_of(solution.checks.begin(), solution.checks.end(),
                     [](const solver::Check& check) { return check.holds; });
}

/// The end of a partition in a brick wall, lined beside it.
Problem lined_junction() {
  Problem problem;
  problem.space(20, 0.25);
  problem.space(0, 0.04);
  const RegionId brick = problem.material(0.77), lining = problem.material(0.04);
  problem.paint(brick, -1, 1, -0.33, 0);
  problem.paint(brick, -0.06, 0.06, 0, 0.8);
  problem.paint(lining, 0.06, 1, 0, 0.04);
  problem.paint(room, -1, -0.06, 0, 0.8);
  problem.paint(room, 0.06, 1, 0.04, 0.8);
  problem.paint(outside, -1, 1, -0.43, -0.33);
  return problem;
}

/// A wall whose room and outside touch at its end without resistance.
Problem endless() {
  Problem problem;
  problem.space(20, 0.0);
  problem.space(0, 0.0);
  problem.paint(problem.material(1.0), 0, 1, 0, 0.3);
  problem.paint(room, 0, 1, 0.3, 0.4);
  problem.paint(outside, 1, 1.1, 0, 0.3);
  return problem;
}

/// The foot of a wall over a void, its floor insulated, in fifteen metres of ground: so much of it
/// that few triangles are left for where it is coldest.
Problem foot_over_void() {
  Problem problem;
  problem.space(20, 0.25);
  problem.space(4, 0.04);
  const SpaceId underfloor = problem.space(12, 0.17);
  const RegionId soil = problem.material(1.5), boards = problem.material(0.13),
                 wool = problem.material(0.035), brick = problem.material(0.682);
  problem.paint(room, -3, 0, 0, 1);
  problem.paint(outside, 0.24, 15.24, -0.15, 1);
  problem.paint(soil, -3, 0.24, -15.15, 0);
  problem.paint(soil, 0.24, 15.24, -15.15, -0.15);
  problem.paint(underfloor, -3, 0.015, -0.422, -0.122);
  problem.paint(boards, -3, 0.015, -0.022, 0);
  problem.paint(wool, -3, 0.015, -0.122, -0.022);
  problem.paint(brick, 0.015, 0.24, -0.45, 1);
  problem.paint(problem.material(0.8), 0, 0.015, 0, 1);
  return problem;
}

}  // namespace

TEST_CASE("the proved thermometer of an upright section holds the mean of a far finer grid") {
  for (const Problem& problem : {external_corner(0.300, 0.77, 0.25), lined_junction()}) {
    const Solution solution = proved(problem, 0.002);
    const AirSurface& air = solution.airs.front();
    REQUIRE(air.thermometer.has_value());
    const double span = problem.temperatures()[room] - problem.temperatures()[outside];
    CHECK(half_width(air) <= 5 * 0.002 * span * (1 + 1e-12));
    const double mean = finer_mean(problem);
    const double slack = 1e-4 * span;  // of the finer grid
    CHECK(air.thermometer->low <= mean + slack);
    CHECK(air.thermometer->high >= mean - slack);
    CHECK(all_hold(solution));
    // Moved by its own width it would not.
    const double width = 2 * half_width(air) + slack;
    const bool held_above = air.thermometer->low + width <= mean - slack;
    const bool held_below = air.thermometer->high - width >= mean + slack;
    CHECK_FALSE((held_above || held_below));
  }
}

TEST_CASE("a limit between the bounds of a thermometer makes them narrower, one beside does not") {
  const Problem corner = external_corner(0.300, 0.77, 0.25);
  const double span = corner.temperatures()[room] - corner.temperatures()[outside];
  const AirSurface free = proved(corner, 0.002).airs.front();
  REQUIRE(half_width(free) > 0.002 * span);
  const double inside = free.thermometer->temperature, beside = free.thermometer->high + 0.1 * span;
  CHECK(half_width(proved(corner, 0.002, {{room, inside}}).airs.front()) <=
        0.002 * span * (1 + 1e-12));
  CHECK(half_width(proved(corner, 0.002, {{room, beside}}).airs.front()) == half_width(free));
}

TEST_CASE("the thermometer of a grid leaves its values and bands as they are") {
  const Problem problem = lined_junction();
  const Question question = question_of(problem, 0.002);
  const Solution before = solver::solution_of(question, {}), after = proved(problem, 0.002);
  CHECK(after.temperature == before.temperature);
  CHECK(after.airs.front().coldest.temperature.value ==
        before.airs.front().coldest.temperature.value);
  CHECK(after.airs.front().coldest.temperature.band ==
        before.airs.front().coldest.temperature.band);
  CHECK(after.checks.size() == before.checks.size());
}

TEST_CASE("a grid whose coldest spot or mean is beyond what triangles prove is contradicted") {
  const Problem corner = external_corner(0.300, 0.77, 0.25);
  const Question question = question_of(corner, 0.002);
  const double span = corner.temperatures()[room] - corner.temperatures()[outside];
  const auto holds_with = [&](double point, double mean) {
    Solution solution = solver::solution_of(question, {});
    AirSurface& air = solution.airs.front();
    air.coldest.temperature.value += point * span;
    for (solver::Spot& spot : air.cold_spots) spot.thermometer += mean * span;
    solver::prove_thermometers(question, {}, {}, solution);
    return all_hold(solution);
  };
  CHECK(holds_with(0.0, 0.0));
  CHECK_FALSE(holds_with(0.05, 0.0));
  CHECK_FALSE(holds_with(0.0, -0.05));
}

TEST_CASE("bounds of a warmer part of a surface are not told of its coldest") {
  const Solution solution = proved(foot_over_void(), 0.002);
  CHECK(all_hold(solution));
  const AirSurface& air = solution.airs.front();
  // Either there is no proof, or it holds what the grid has for the coldest spot.
  if (air.thermometer) CHECK(air.thermometer->low <= air.coldest.thermometer + 0.05);
}

TEST_CASE("triangles narrow a bracket of L2D that the grid leaves wider than asked for") {
  const Problem corner = external_corner(0.300, 0.75, 0.13);
  const Question question = question_of(corner, {}, 1e-4);
  solver::Effort little;
  little.patience = 1;  // the first grid is the last
  const Solution grid = solver::solution_on_grids(question, little);
  const Solution both = solver::solution_of(question, little);
  CHECK_FALSE(grid.accurate);
  CHECK(both.accurate);
  const solver::Coupling &wide = grid.couplings.front(), &narrow = both.couplings.front();
  const double rounding = 1e-9;
  CHECK(narrow.low >= wide.low - rounding);
  CHECK(narrow.high <= wide.high + rounding);
  CHECK(narrow.value == (narrow.low + narrow.high) / 2);
  // T7: computed by two independent discretisations, known to five decimals.
  CHECK(narrow.low <= 3.72876 + 5e-6);
  CHECK(narrow.high >= 3.72876 - 5e-6);
  Question without_sheet = question;
  without_sheet.sheet.clear();
  const Solution alone = solver::solution_of(without_sheet, little);
  CHECK_FALSE(alone.accurate);
}

TEST_CASE("a bracket of L2D that is narrow enough stays as the grid has it") {
  const Question question = question_of(external_corner(0.300, 0.75, 0.13), {}, 1e-3);
  const Solution grid = solver::solution_on_grids(question, {});
  Solution both = grid;
  solver::prove_couplings(question, {}, both);
  CHECK(grid.accurate);
  CHECK(both.couplings.front().low == grid.couplings.front().low);
  CHECK(both.couplings.front().high == grid.couplings.front().high);
}

TEST_CASE("brackets of L2D that exclude each other are a check that does not hold") {
  const Question question = question_of(external_corner(0.300, 0.75, 0.13), {}, 1e-4);
  solver::Effort little;
  little.patience = 1;
  Solution solution = solver::solution_on_grids(question, little);
  solver::prove_couplings(question, {}, solution);
  CHECK(all_hold(solution));
  solver::Coupling& wrong = solution.couplings.front();
  wrong = {wrong.a, wrong.b, 1.1 * wrong.value, 1.1 * wrong.value * 0.99, 1.1 * wrong.value * 1.01};
  const double kept = wrong.low;
  solver::prove_couplings(question, {}, solution);
  CHECK_FALSE(all_hold(solution));
  CHECK(solution.couplings.front().low == kept);
}

TEST_CASE("where heat flows without end no thermometer is proved") {
  const Solution solution = proved(endless(), 0.002);
  REQUIRE(solution.airs.size() == 1);
  CHECK_FALSE(solution.airs.front().thermometer.has_value());
  CHECK(proved(external_corner(0.3, 0.77, 0.25), 0.002).airs.front().thermometer.has_value());
}

TEST_CASE("a layer thinner than triangles can tell has no proof") {
  const auto wall_with = [](double thin) {
    Problem problem;
    problem.space(20, 0.13);
    problem.space(0, 0.04);
    const RegionId brick = problem.material(0.77), foil = problem.material(160);
    problem.paint(brick, 0, 0.2, 0, 0.3);
    problem.paint(foil, 0.2, 0.2 + thin, 0, 0.3);
    problem.paint(room, -0.1, 0, 0, 0.3);
    problem.paint(outside, 0.2 + thin, 0.3, 0, 0.3);
    return problem;
  };
  CHECK_FALSE(proved(wall_with(1e-5), 0.002).airs.front().thermometer.has_value());
  CHECK(proved(wall_with(1e-4), 0.002).airs.front().thermometer.has_value());
}

}  // namespace quoin::testing
