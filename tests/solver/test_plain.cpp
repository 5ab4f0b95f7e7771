// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <vector>

#include "geometry/recipe.hpp"
#include "solver/plain.hpp"
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

}  // namespace quoin::solver
