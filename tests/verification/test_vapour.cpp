// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "tests/support/vapour_wall.hpp"
#include "tests/support/within.hpp"

// The chain of layers of the method of ISO 13788, done by hand in series: plaster 15 mm, insulation
// 60 mm, brick 330 mm, render 20 mm; inside 20 degC 50 %, outside -5 degC 80 %, Rsi 0.25, Rse 0.04,
// permeability of air 2.0e-10 kg/(m s Pa). Source: computed, exact sums in series.

namespace quoin::testing {
namespace {

const VapourLayer plaster{0.015, 0.80, 10}, insulation{0.060, 0.040, 1}, brick{0.330, 0.77, 10},
    render{0.020, 0.80, 15};
constexpr double ninety_days = 90 * 86400.0;
constexpr double four_digits = 1e-4;  // those the values are printed with

VapourWall wall_of(const std::vector<VapourLayer>& layers) {
  return {layers, 20.0, 0.50, -5.0, 0.80};
}

double total(const std::vector<double>& values) {
  double sum = 0.0;
  for (const double value : values) sum += value;
  return sum;
}

}  // namespace

TEST_CASE("a lined wall condenses behind its lining as the chain of layers says") {
  const VapourWall wall = wall_of({plaster, insulation, brick, render});
  const solver::Field heat = wall.heat();
  const std::vector<double> temperature = solver::temperatures(heat, wall.problem.temperatures());
  const double places[] = {0.0, 0.015, 0.075, 0.405, 0.425};
  const double degrees[] = {17.237, 17.030, 0.454, -4.282, -4.558};
  for (std::size_t k = 0; k < 5; ++k) {
    const double there = solver::temperature_at(heat, temperature, {places[k], 0.5});
    CHECK(there == WithinAbs{degrees[k], 0.0005});  // half a last digit
  }
  const solver::VapourField vapour = wall.vapour(heat);
  const auto places_found = solver::Sites(heat.mesh).gathered(vapour.condensing);
  REQUIRE(places_found.size() == 1);
  const solver::Gathered& behind = places_found.front();
  CHECK(behind.meeting == solver::Meeting(RegionId(1u), RegionId(2u)));
  CHECK(behind.length == WithinAbs{1.0, 1e-12});
  CHECK(behind.most.x == WithinAbs{0.075, 1e-12});
  CHECK(behind.amount == WithinRel{4.947e-7, four_digits});
  CHECK(behind.amount * ninety_days == WithinRel{3.847, four_digits + 1e-4});
  CHECK(total(vapour.condensing) ==
        WithinRel{vapour.flows[SpaceId(0u)] + vapour.flows[SpaceId(1u)], 1e-9});
  CHECK(vapour.iterations < 20);
}

TEST_CASE("the rate of the chain of layers is the same on any grid") {
  const VapourWall wall = wall_of({plaster, insulation, brick, render});
  const double first = total(wall.vapour(0).condensing);
  CHECK(total(wall.vapour(2).condensing) == WithinRel{first, 1e-8});  // solves to 1e-12
}

TEST_CASE("the wall without its insulation condenses nowhere") {
  const VapourWall wall = wall_of({plaster, brick, render});
  const solver::VapourField vapour = wall.vapour();
  CHECK(total(vapour.condensing) == 0.0);
  CHECK(vapour.flows[SpaceId(0u)] == WithinRel{4.520e-8, four_digits});
  CHECK(vapour.flows[SpaceId(1u)] == WithinRel{-4.520e-8, four_digits});
}

TEST_CASE("wrong vapour resistances would miss the chain of layers") {
  VapourLayer tighter = plaster;
  tighter.resistance_factor = 20;
  const VapourWall wall = wall_of({tighter, insulation, brick, render});
  CHECK_FALSE(total(wall.vapour().condensing) == WithinRel{4.947e-7, 0.1});
}

TEST_CASE("without its ceiling the pressure behind the lining would pass saturation") {
  // In series from inside to outside the pressure would be above that of saturation at 0.454 degC.
  const double inside = 0.5 * materials::saturation_pressure(20.0);
  const double outside = 0.8 * materials::saturation_pressure(-5.0);
  const double before = 0.015 * 10 + 0.06 * 1, after = 0.33 * 10 + 0.02 * 15;
  const double ignored = inside - (inside - outside) * before / (before + after);
  CHECK(ignored > 1.7 * materials::saturation_pressure(0.454));
  const VapourWall wall = wall_of({plaster, insulation, brick, render});
  const solver::Field heat = wall.heat();
  const solver::VapourField vapour = wall.vapour(heat);
  for (std::size_t n = 0; n < vapour.pressure.size(); ++n) {
    if (heat.solid[n] != 0) CHECK(vapour.pressure[n] <= vapour.saturation[n] * (1 + 1e-9));
  }
}

TEST_CASE("a coat resists like a layer of the same sd") {
  VapourWall painted = wall_of({plaster, brick});
  painted.coat(SpaceId(0u), 2.0);
  const VapourWall bare = wall_of({plaster, brick});
  const double drop = bare.pressures[SpaceId(0u)] - bare.pressures[SpaceId(1u)];
  const double wall_sd = 0.015 * 10 + 0.33 * 10;
  CHECK(bare.vapour().flows[SpaceId(0u)] ==
        WithinRel{solver::air_permeability * drop / wall_sd, 1e-9});
  CHECK(painted.vapour().flows[SpaceId(0u)] ==
        WithinRel{solver::air_permeability * drop / (wall_sd + 2.0), 1e-9});
}

TEST_CASE("a tight coat outside lets water gather under it") {
  VapourWall wall({brick}, 20.0, 0.60, 0.0, 0.85);
  CHECK(total(wall.vapour().condensing) == 0.0);
  wall.coat(SpaceId(1u), 3.0);
  const solver::Field heat = wall.heat();
  const auto found = solver::Sites(heat.mesh).gathered(wall.vapour(heat).condensing);
  REQUIRE(!found.empty());
  CHECK(found.front().meeting == solver::Meeting(RegionId(0u), SpaceId(1u)));
}

TEST_CASE("a foil passes nothing, and what lies between foils is not told") {
  const VapourLayer foil{0.001, 160.0, INFINITY};
  const VapourWall one = wall_of({foil, insulation, brick});
  const solver::VapourField behind = one.vapour();
  CHECK(total(behind.condensing) == 0.0);
  CHECK(behind.flows[SpaceId(0u)] == 0.0);
  const VapourWall two = wall_of({brick, foil, insulation, foil, brick});
  const solver::Field heat = two.heat();
  const solver::VapourField between = two.vapour(heat);
  for (std::size_t n = 0; n < between.pressure.size(); ++n) {
    if (heat.solid[n] == 0) continue;
    const double x = heat.mesh.place(n).x;
    const bool enclosed = x > 0.33 + geometry::snap && x < 0.392 - geometry::snap;
    CHECK(std::isnan(between.pressure[n]) == enclosed);
  }
}

TEST_CASE("a wet wall gives off to each air what its coat lets through") {
  VapourWall wall({brick}, 20.0, 0.50, 5.0, 0.80);
  wall.physics.wet[RegionId(0u)] = 1;
  wall.coat(SpaceId(0u), 0.1);
  wall.coat(SpaceId(1u), 1.0);
  const double u = 25.0 - 10.0;  // K
  const double flow = u / (0.25 + 0.33 / 0.77 + 0.04);
  const double inner = materials::saturation_pressure(20.0 - 0.25 * flow);
  const double outer = materials::saturation_pressure(5.0 + 0.04 * flow);
  const solver::VapourField vapour = wall.vapour();
  const double inwards = solver::air_permeability * (wall.pressures[SpaceId(0u)] - inner) / 0.1;
  const double outwards = solver::air_permeability * (wall.pressures[SpaceId(1u)] - outer) / 1.0;
  CHECK(vapour.flows[SpaceId(0u)] == WithinRel{inwards, 1e-8});
  CHECK(vapour.flows[SpaceId(1u)] == WithinRel{outwards, 1e-8});
  CHECK(vapour.from_wet == WithinRel{-inwards - outwards, 1e-7});
}

TEST_CASE("a surface below the dew point is just saturated, and its length is told") {
  const VapourWall wall({brick}, 20.0, 0.90, -5.0, 0.80);
  const solver::Field heat = wall.heat();
  const solver::VapourField vapour = wall.vapour(heat);
  CHECK(vapour.dripping[SpaceId(0u)] == WithinAbs{1.0, 1e-12});
  CHECK(vapour.dripping[SpaceId(1u)] == 0.0);
  for (std::size_t n = 0; n < vapour.pressure.size(); ++n) {
    if (std::abs(heat.mesh.place(n).x) > geometry::snap) continue;
    CHECK(vapour.pressure[n] == WithinRel{vapour.saturation[n], 1e-12});
    CHECK(vapour.pressure[n] < wall.pressures[SpaceId(0u)]);
  }
}

TEST_CASE("stored water is dried by as much as diffuses away, and none is lost") {
  // A month of winter, then one of summer, each in one step.
  VapourWall wall = wall_of({plaster, insulation, brick, render});
  const double month = 30 * 86400.0;
  const solver::Field heat = wall.heat();
  solver::Stored stored{std::vector<double>(heat.solid.size(), 0.0), month};
  const solver::VapourField winter = wall.vapour(heat, &stored);
  for (std::size_t n = 0; n < stored.water.size(); ++n)
    stored.water[n] = winter.condensing[n] * month;
  CHECK(total(stored.water) == WithinRel{4.947e-7 * month, four_digits});
  // Two steps of half the length end where one does.
  solver::Stored half{std::vector<double>(heat.solid.size(), 0.0), month / 2};
  for (int step = 0; step < 2; ++step) {
    const solver::VapourField next = wall.vapour(heat, &half);
    for (std::size_t n = 0; n < half.water.size(); ++n)
      half.water[n] = next.condensing[n] * month / 2;
  }
  CHECK(total(half.water) == WithinRel{total(stored.water), 1e-8});
  wall.problem.temperatures()[SpaceId(1u)] = 15.0;
  wall.pressures[SpaceId(1u)] = 0.70 * materials::saturation_pressure(15.0);
  const solver::VapourField summer = wall.vapour(heat, &stored);
  const double left = total(summer.condensing) * month;
  CHECK(left < total(stored.water));
  double out = 0.0;
  for (const double flow : summer.flows) out -= flow * month;
  CHECK(out == WithinRel{total(stored.water) - left, 1e-7});
}

}  // namespace quoin::testing
