// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <string>
#include <vector>

#include "tests/support/csv.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

const std::string data = QUOIN_SOURCE_DIR "/tests/verification/data/";

bool holds(const solver::Coupling& bracket, double truth, double rounding = 0.0) {
  return bracket.low <= truth + rounding && truth - rounding <= bracket.high;
}

/// Half a fin of rectangular section, standing on its base.
struct Fin {
  Problem problem;
  SpaceId base = problem.space(1, 0.0);
  SpaceId air = problem.space(0, 0.13);

  Fin() {
    problem.paint(problem.material(0.8), 0, 0.05, 0, 0.2);
    problem.paint(base, 0, 0.05, -0.05, 0);
    problem.paint(air, 0.05, 0.1, 0, 0.2);
  }
};

/// Two by two squares of conductivities 1 and k, fixed temperatures at top and bottom.
Problem checkerboard(double k) {
  Problem problem;
  const SpaceId top = problem.space(1, 0.0), bottom = problem.space(0, 0.0);
  const RegionId one = problem.material(1), other = problem.material(k);
  problem.paint(one, 0, 1, 0, 1);
  problem.paint(other, 0, 0.5, 0, 0.5);
  problem.paint(other, 0.5, 1, 0.5, 1);
  problem.paint(top, 0, 1, 1, 1.1);
  problem.paint(bottom, 0, 1, -0.1, 0);
  return problem;
}

/// A corner of walls 1 and `ratio` thick, both faces at fixed temperatures, with legs of three
/// times the thicker wall from the inner corner.
Problem isothermal_corner(double ratio, double inside_resistance = 0.0) {
  Problem problem;
  const SpaceId inside = problem.space(1, inside_resistance), outside = problem.space(0, 0.0);
  const RegionId wall = problem.material(1.0);
  const double leg = 3 * ratio;
  problem.paint(outside, -0.1, 1 + leg, -0.1, ratio + leg);
  problem.paint(wall, 0, 1 + leg, 0, ratio + leg);
  problem.paint(inside, 1, 1 + leg, ratio, ratio + leg);
  return problem;
}

}  // namespace

TEST_CASE("the worked layered wall has its published temperatures and heat flow") {
  // Source: sum of resistances by hand: plaster 15 mm 0.80, brick 330 mm 0.77, render 20 mm 0.80,
  // 20/-5 degC, Rsi 0.13, Rse 0.04.
  Problem problem = layered_wall({{0.015, 0.80}, {0.33, 0.77}, {0.02, 0.80}});
  problem.temperatures()[SpaceId(1)] = -5;
  const std::vector<double> x = {0, 0.015, 0.345, 0.365};
  const std::vector<double> exact = {14.940228, 14.210453, -2.470114, -3.443147};
  std::vector<geometry::Point> places;
  for (const double at : x) places.push_back({at, 0.4});
  const solver::Solution solution =
      problem.solution({SpaceId(0)}, SpaceId(1), 0.002, 0.001, places);
  CHECK(solution.couplings.front().value == WithinAbs{1.55685293, 5e-9});
  CHECK(solution.flows[SpaceId(0)] == WithinAbs{38.921323, 5e-7});
  for (std::size_t k = 0; k < x.size(); ++k) {
    CHECK(solution.probes[k].temperature.value == WithinAbs{exact[k], 6e-7});
  }
  problem.change_resistance(SpaceId(0), 0.25);
  const solver::Solution surface = problem.solution({SpaceId(0)}, SpaceId(1), 0.002, {});
  CHECK(surface.airs.front().coldest.temperature.value == WithinAbs{11.801359, 6e-7});
}

TEST_CASE("a fin carries the exact heat at the exact temperatures") {
  const Fin fin;
  const Csv table = csv_of(data + "fin.csv");
  std::vector<geometry::Point> places;
  for (const CsvRow& row : table.rows()) places.push_back({row.number("x_m"), row.number("y_m")});
  const solver::Solution solution = fin.problem.solution({fin.air}, fin.base, 1e-4, 2e-5, places);
  const double exact = 0.5179785808;  // W/m; source: the same series
  CHECK(solution.accurate);
  CHECK(holds(solution.couplings.front(), exact));
  CHECK(solution.couplings.front().value == WithinRel{exact, 2e-5});  // the accuracy asked for
  for (std::size_t k = 0; k < places.size(); ++k) {
    CAPTURE(k);
    const solver::Estimate& found = solution.probes[k].temperature;
    const double truth = table.rows()[k].number("temperature");
    CHECK(found.value == WithinAbs{truth, 1e-4});  // the accuracy asked for
    CHECK(std::abs(found.value - truth) <= found.band + 1e-9);
  }
}

TEST_CASE("a checkerboard conducts the geometric mean of its two materials") {
  // Source: exact by duality, for any two conductivities.
  for (const double k : {4.0, 25.0, 400.0}) {
    CAPTURE(k);
    const double exact = std::sqrt(k);
    double former = 1e9;
    for (const double density : {4.0, 8.0, 16.0, 32.0}) {
      const solver::Coupling bracket = checkerboard(k).couplings(density).front();
      CHECK(holds(bracket, exact));
      CHECK(bracket.high - bracket.low < former);
      former = bracket.high - bracket.low;
    }
  }
}

TEST_CASE("graded towards its middle a checkerboard of 25 to 1 is known to a thousandth") {
  const solver::Coupling bracket = checkerboard(25).couplings(64).front();
  // Uniform grids of this size are off by several per cent: the order is about a half.
  CHECK(bracket.value == WithinRel{5.0, 1e-3});
}

TEST_CASE("an isothermal corner conducts its legs and the exact excess") {
  struct Known {
    double ratio;
    double excess;
  };
  // Source: conformal mapping; for equal walls 1 - (2/pi) ln 2 (textbooks print 0.54, 3 % low).
  for (const Known& known : {Known{1.0, 1 - 2 / std::numbers::pi * std::numbers::ln2},
                             Known{1.5, 0.588297}, Known{2.0, 0.643537}, Known{3.0, 0.763485}}) {
    CAPTURE(known.ratio);
    // Legs of three thicknesses: cut off where the disturbance is below exp(-6 pi) = 7e-9.
    const double exact = 3 * known.ratio + 3 + known.excess;
    const solver::Solution solution =
        isothermal_corner(known.ratio).solution({}, SpaceId(1), {}, 1e-5);
    const solver::Coupling& bracket = solution.couplings.front();
    CHECK(holds(bracket, exact, 5e-7));  // the excess is known to six digits
    CHECK(bracket.high - bracket.low <= 2e-5 * exact);
    CHECK(bracket.value == WithinAbs{exact, 1e-4});
    CHECK_FALSE(bracket.value == WithinAbs{exact - 0.0187, 1e-4});  // 0.54 would not pass
  }
}

TEST_CASE("a surface resistance inside is seen: the corner is then no isothermal one") {
  const solver::Coupling bracket = isothermal_corner(1.0, 0.01).couplings(8).front();
  CHECK_FALSE(holds(bracket, 6 + 0.5587287997));
}

}  // namespace quoin::testing
