// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <vector>

#include "geometry/recipe.hpp"
#include "solver/findings/plain.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using geometry::Dimensions;
using geometry::Flank;
using testing::Problem;
using testing::WithinAbs;

/// Plaster, brick and render of the worked layered wall.
struct Worked {
  Problem problem = testing::layered_wall({{0.015, 0.80}, {0.33, 0.77}, {0.02, 0.80}});
  Flank flank{"wall",     {{RegionId(0), 0.015}, {RegionId(1), 0.33}, {RegionId(2), 0.02}},
              SpaceId(0), SpaceId(1),
              0,          0,
              0};
};

}  // namespace

TEST_CASE("U comes from the resistances of heat flow, the surface from those of its temperature") {
  Worked worked;
  worked.problem.temperatures()[SpaceId(1)] = -5;
  const Physics heat = worked.problem.physics();
  worked.problem.change_resistance(SpaceId(0), 0.25);
  const PlainPart part =
      plain_part(worked.flank, worked.problem.physics(), heat, worked.problem.temperatures());
  CHECK(part.name == "wall");
  // Source: sum of resistances by hand; 20/-5 degC, Rsi 0.13 for U and 0.25 for the surface.
  CHECK(part.transmittance == WithinAbs{1.55685293, 5e-9});
  CHECK(part.surface_temperature == WithinAbs{11.801359, 5e-7});
  CHECK(part.surface_factor == WithinAbs{(11.801359 + 5) / 25, 1e-7});
}

TEST_CASE("psi is L2D less what the plane parts conduct, by each way of measuring") {
  Worked worked;
  worked.flank.internal = 2.0;
  worked.flank.overall_internal = 2.1;
  worked.flank.external = 2.6;
  Solution heat;
  heat.physics = worked.problem.physics();
  heat.couplings = {{SpaceId(0), SpaceId(1), 3.5, 3.4, 3.6}};
  const auto psi = linear_transmittances({worked.flank}, heat);
  REQUIRE(psi.size() == 3);
  const double u = 1.55685293;
  CHECK(psi[0].dimensions == Dimensions::internal);
  CHECK(psi[0].value.value == WithinAbs{3.5 - 2.0 * u, 1e-8});
  CHECK(psi[1].value.value == WithinAbs{3.5 - 2.1 * u, 1e-8});
  CHECK(psi[2].dimensions == Dimensions::external);
  CHECK(psi[2].value.value == WithinAbs{3.5 - 2.6 * u, 1e-8});
  for (const auto& one : psi) CHECK(one.value.band == WithinAbs{0.1, 1e-12});
}

TEST_CASE("several flanks are all taken off") {
  Worked worked;
  worked.flank.internal = worked.flank.overall_internal = worked.flank.external = 1.0;
  Solution heat;
  heat.physics = worked.problem.physics();
  heat.couplings = {{SpaceId(0), SpaceId(1), 3.5, 3.4, 3.6}};
  const auto psi = linear_transmittances({worked.flank, worked.flank}, heat);
  CHECK(psi.front().value.value == WithinAbs{3.5 - 2 * 1.55685293, 1e-8});
}

TEST_CASE("psi has no meaning where nothing meets, or where the airs are not coupled") {
  Worked worked;
  Solution heat;
  heat.physics = worked.problem.physics();
  heat.couplings = {{SpaceId(0), SpaceId(1), 3.5, 3.4, 3.6}};
  CHECK(linear_transmittances({worked.flank}, heat).empty());
  CHECK(linear_transmittances({}, heat).empty());
  worked.flank.external = 1.0;
  heat.couplings.clear();
  CHECK(linear_transmittances({worked.flank}, heat).empty());
}

TEST_CASE("a floor on the ground has the U of ISO 13370, its own resistance looking up") {
  Problem problem;
  const SpaceId inside = problem.space(20, 0.17), outside = problem.space(0, 0.04);
  const RegionId flags = problem.material(1.7), clay = problem.material(1.5);
  Flank floor{.name = "floor", .layers = {{flags, 0.06}}, .inside = inside, .outside = outside};
  floor.looks = geometry::Facing::up;
  floor.on_ground = {clay, 8.0, 0.3};
  const Physics physics = problem.physics();
  const PlainPart part = plain_part(floor, physics, physics, problem.temperatures());
  // Source: ISO 13370, from memory: dt = 0.3 + 1.5 (0.17 + 0.06 / 1.7 + 0.04) = 0.667941,
  // U = 2 1.5 / (pi 8 + dt) ln(pi 8 / dt + 1), by hand.
  CHECK(part.transmittance == WithinAbs{0.424867, 2e-6});
  CHECK(part.surface_factor == WithinAbs{1 - 0.17 * 0.424867, 1e-6});
  floor.layers.clear();  // bare earth
  CHECK(plain_part(floor, physics, physics, problem.temperatures()).transmittance > 0.424867);
}

TEST_CASE("psi takes a floor on the ground off by formula, and as it was solved without the wall") {
  Worked worked;
  worked.flank.internal = worked.flank.overall_internal = worked.flank.external = 1.0;
  Flank floor = worked.flank;
  floor.looks = geometry::Facing::up;
  floor.on_ground = {RegionId(1), 8.0, 0.3};
  floor.internal = floor.overall_internal = floor.external = 4.0;
  Solution heat, alone;
  heat.physics = alone.physics = worked.problem.physics();
  heat.couplings = {{SpaceId(0), SpaceId(1), 3.5, 3.4, 3.6}};
  alone.couplings = {{SpaceId(0), SpaceId(1), 1.2, 1.15, 1.25}};
  const PlainPart plain =
      plain_part(floor, heat.physics, heat.physics, worked.problem.temperatures());
  const auto by_formula = linear_transmittances({worked.flank, floor}, heat);
  REQUIRE(by_formula.size() == 3);
  CHECK(by_formula.front().floor == FloorLoss::by_formula);
  CHECK(by_formula.front().value.value ==
        WithinAbs{3.5 - 1.55685293 - 4 * plain.transmittance, 1e-8});
  const auto both = linear_transmittances({worked.flank, floor}, heat, &alone);
  REQUIRE(both.size() == 4);
  CHECK(both.back().floor == FloorLoss::solved);
  CHECK(both.back().value.value == WithinAbs{3.5 - 1.55685293 - 1.2, 1e-8});
  CHECK(both.back().value.band == WithinAbs{0.15, 1e-12});
  CHECK(linear_transmittances({worked.flank}, heat, &alone).size() == 3);  // no floor, no choice
}

}  // namespace quoin::solver
