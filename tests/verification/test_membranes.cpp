// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

#include "tests/support/vapour_wall.hpp"
#include "tests/support/within.hpp"

// Membranes in the chain of layers of tests/verification/test_vapour.cpp, done by hand in series.
// Source: computed, exact sums in series; the method is that of ISO 13788.

namespace quoin::testing {
namespace {

using geometry::MembraneId;

const VapourLayer plaster{0.015, 0.80, 10}, insulation{0.060, 0.040, 1}, brick{0.330, 0.77, 10},
    render{0.020, 0.80, 15};
constexpr double behind_plaster = 0.015, behind_insulation = 0.075;
constexpr double exact = 1e-8;  // rounding of the linear solve
/// Nodes that are one differ by a share of what else they conduct, see solver/vapour.cpp.
constexpr double joined = 1e-6;

VapourWall wall_of(const std::vector<VapourLayer>& layers) {
  return {layers, 20.0, 0.50, -5.0, 0.80};
}
VapourWall lined_wall() { return wall_of({plaster, insulation, brick, render}); }

double total(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0);
}

// By hand.
const double room = 0.50 * materials::saturation_pressure(20.0);
const double yard = 0.80 * materials::saturation_pressure(-5.0);

/// Saturation at the cold side of the insulation.
double saturation_behind_insulation() {
  const double inner = 0.25 + 0.015 / 0.80 + 0.060 / 0.040;
  const double all = inner + 0.330 / 0.77 + 0.020 / 0.80 + 0.04;
  return materials::saturation_pressure(20.0 - 25.0 * inner / all);
}

/// What condenses behind the insulation, kg/(m2 s), with some sd before it and some behind.
double condensing(double sd_before, double sd_behind) {
  const double there = saturation_behind_insulation();
  return solver::air_permeability *
         ((room - there) / (0.21 + sd_before) - (there - yard) / (3.6 + sd_behind));
}

}  // namespace

TEST_CASE("a membrane resists vapour like a layer of its sd, and heat not at all") {
  VapourWall wall = wall_of({plaster, brick});
  const solver::Field bare_heat = wall.heat();
  const double bare = wall.vapour(bare_heat).flows[SpaceId(0u)];
  wall.membrane(behind_plaster, 2.0);
  const solver::Field heat = wall.heat();
  const double wall_sd = 0.015 * 10 + 0.33 * 10;
  CHECK(bare == WithinRel{solver::air_permeability * (room - yard) / wall_sd, exact});
  CHECK(wall.vapour(heat).flows[SpaceId(0u)] ==
        WithinRel{solver::air_permeability * (room - yard) / (wall_sd + 2.0), exact});
  CHECK(heat.basis == bare_heat.basis);
}

TEST_CASE("a vapour barrier on the warm side lets less condense, by the chain of layers") {
  VapourWall wall = lined_wall();
  CHECK(condensing(0.0, 0.0) == WithinRel{4.947e-7, 1e-4});  // four digits
  wall.membrane(behind_plaster, 3.0);
  CHECK(condensing(3.0, 0.0) > 0.0);
  const solver::Field heat = wall.heat();
  const auto places = solver::Sites(heat.mesh).gathered(wall.vapour(heat).condensing);
  REQUIRE(places.size() == 1);
  CHECK(places.front().meeting == solver::Meeting(RegionId(1u), RegionId(2u)));
  CHECK(places.front().amount == WithinRel{condensing(3.0, 0.0), exact});
  VapourWall tighter = lined_wall();
  tighter.membrane(behind_plaster, 10.0);
  CHECK(condensing(10.0, 0.0) < 0.0);
  CHECK(total(tighter.vapour().condensing) == 0.0);
}

TEST_CASE("a membrane on the cold side has water on its warm side, and that is the place") {
  for (const double sd : {1.0, 100.0, std::numeric_limits<double>::infinity()}) {
    VapourWall wall = lined_wall();
    const MembraneId membrane = wall.membrane(behind_insulation, sd);
    for (const int doublings : {0, 1}) {
      const solver::Field heat = wall.heat(doublings);
      const solver::VapourField vapour = wall.vapour(heat);
      const auto places = solver::Sites(heat.mesh).gathered(vapour.condensing);
      REQUIRE(places.size() == 1);
      CHECK(places.front().meeting == solver::Meeting(RegionId(1u), membrane));
      CHECK(places.front().length == WithinAbs{1.0, 1e-12});
      CHECK(places.front().most.x == WithinAbs{behind_insulation, 1e-12});
      CHECK(places.front().amount == WithinRel{condensing(0.0, sd), exact});
      const double out =
          solver::air_permeability * (saturation_behind_insulation() - yard) / (3.6 + sd);
      CHECK(vapour.flows[SpaceId(1u)] == WithinAbs{-out, 1e-8 * condensing(0.0, 0.0)});
    }
  }
  // The wrong side: behind the plaster there is no place where it condenses on the membrane.
  VapourWall wall = lined_wall();
  const MembraneId membrane = wall.membrane(behind_plaster, 100.0);
  const solver::Field heat = wall.heat();
  for (const solver::Gathered& one :
       solver::Sites(heat.mesh).gathered(wall.vapour(heat).condensing))
    CHECK(one.meeting.second != geometry::Fill(membrane));
}

TEST_CASE("foils between layers pass nothing, and what lies between them is not told") {
  VapourWall wall = lined_wall();
  wall.membrane(behind_plaster, INFINITY);
  wall.membrane(behind_insulation, INFINITY);
  const solver::Field heat = wall.heat();
  const solver::VapourField vapour = wall.vapour(heat);
  CHECK(vapour.flows[SpaceId(0u)] == WithinAbs{0.0, 1e-20});  // rounding of the fluxes
  CHECK(vapour.flows[SpaceId(1u)] == WithinAbs{0.0, 1e-20});
  const geometry::TwoSided nodes(heat.mesh);
  int between = 0;
  for (std::size_t n = 0; n < nodes.size(); ++n) {
    const std::size_t at = nodes.of_mesh(n);
    if (heat.solid[at] == 0) continue;
    const double x = heat.mesh.place(at).x;
    const bool told = !std::isnan(vapour.pressure[n]);
    if (x > behind_plaster + geometry::snap && x < behind_insulation - geometry::snap) {
      CHECK_FALSE(told);
      ++between;
    } else if (told) {
      CHECK(vapour.pressure[n] == WithinRel{x < 0.03 ? room : yard, exact});
    }
  }
  CHECK(between > 0);
}

TEST_CASE("a damp course parts the wall above from the wall below") {
  // A tight sheet through the wall at half its height, and a membrane in the lower half only: each
  // half is a chain of its own, and the line of the membrane goes on through the upper half.
  VapourWall wall = wall_of({plaster, brick});
  wall.membrane(behind_plaster, 2.0, 0.0, 0.5);
  wall.membrane(INFINITY, {{0.0, 0.5}, {0.345, 0.5}});
  const double wall_sd = 0.015 * 10 + 0.33 * 10;
  const double halves =
      solver::air_permeability * (room - yard) * (0.5 / wall_sd + 0.5 / (wall_sd + 2.0));
  CHECK(wall.vapour().flows[SpaceId(0u)] == WithinRel{halves, joined});
  // Without the sheet vapour goes round the end of the membrane: more passes, by far more than the
  // solver is off.
  VapourWall open = wall_of({plaster, brick});
  open.membrane(behind_plaster, 2.0, 0.0, 0.5);
  CHECK(open.vapour().flows[SpaceId(0u)] > halves * (1.0 + 100 * joined));
}

TEST_CASE("what goes round a membrane lies between no membrane and a whole one") {
  double before = 0.0;
  const double none = wall_of({plaster, brick}).vapour().flows[SpaceId(0u)];
  for (const double length : {0.9, 0.5, 0.1}) {
    VapourWall wall = wall_of({plaster, brick});
    wall.membrane(behind_plaster, INFINITY, 0.0, length);
    const double flow = wall.vapour().flows[SpaceId(0u)];
    CHECK(flow > before);
    CHECK(flow < none);
    before = flow;
  }
}

TEST_CASE("a tight sheet across plane layers with a foil between them changes nothing") {
  VapourWall wall = lined_wall();
  wall.membrane(behind_insulation, INFINITY);
  wall.membrane(INFINITY, {{0.0, 0.5}, {behind_insulation, 0.5}});
  const solver::Field heat = wall.heat();
  const solver::VapourField vapour = wall.vapour(heat);
  // A tight sheet across plane layers changes nothing: no vapour goes that way.
  CHECK(total(vapour.condensing) == WithinRel{condensing(0.0, INFINITY), joined});
}

TEST_CASE("water stored at a membrane is carried on, and none is lost") {
  VapourWall wall = lined_wall();
  wall.membrane(behind_insulation, 5.0);
  const double month = 30 * 86400.0;
  const solver::Field heat = wall.heat();
  const geometry::TwoSided nodes(heat.mesh);
  solver::Stored stored{std::vector<double>(nodes.size(), 0.0), month};
  const solver::VapourField winter = wall.vapour(heat, &stored);
  for (std::size_t n = 0; n < stored.water.size(); ++n)
    stored.water[n] = winter.condensing[n] * month;
  wall.problem.temperatures()[SpaceId(1u)] = 15.0;
  wall.pressures[SpaceId(1u)] = 0.70 * materials::saturation_pressure(15.0);
  const solver::VapourField summer = wall.vapour(heat, &stored);
  const double left = total(summer.condensing) * month;
  double out = 0.0;
  for (const double flow : summer.flows) out -= flow * month;
  CHECK(left < total(stored.water));
  CHECK(out == WithinRel{total(stored.water) - left, 1e-7});
}

}  // namespace quoin::testing
