// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "materials/air_bricks.hpp"
#include "materials/ground_floor.hpp"
#include "tests/support/within.hpp"

namespace quoin::materials {

using testing::WithinRel;

TEST_CASE("a floor loses more the narrower it is, and less the better it is insulated") {
  const GroundFloor floor{8.0, 0.3, 0.21, 2.0};
  GroundFloor narrow = floor, insulated = floor;
  narrow.width = 4.0;
  insulated.resistance = 1.5;
  CHECK(transmittance_of(narrow) > transmittance_of(floor));
  CHECK(transmittance_of(insulated) < transmittance_of(floor));
}

TEST_CASE("the formula for poor floors meets the one for good ones") {
  // Where the equivalent thickness is the width; the two formulas of ISO 13370 differ there by
  // rounding of their constants.
  const GroundFloor below{4.0, 0.4, (4.0 - 0.4) / 2.0 - 1e-9, 2.0};
  const GroundFloor above{4.0, 0.4, (4.0 - 0.4) / 2.0 + 1e-9, 2.0};
  CHECK(transmittance_of(below) == WithinRel{transmittance_of(above), 2e-4});
}

TEST_CASE("a floor far better than the ground has nearly its own U") {
  const GroundFloor floor{8.0, 0.3, 40.0, 2.0};
  CHECK(transmittance_of(floor) == WithinRel{1 / 40.0, 0.06});
  CHECK(transmittance_of(floor) < 1 / 40.0);
}

TEST_CASE("a suspended floor loses by its void what ground, walls and air take, in series") {
  const SuspendedFloor floor{0.5, {4.0, 0.3, 0.21, 2.0}, 0.3, 1.5, 0.2};
  const double below = transmittance_of(floor.ground) + 2 * 0.3 * 1.5 / 4.0 + 2 * 0.2 / 4.0;
  CHECK(transmittance_of(floor) == WithinRel{1 / (0.5 + 1 / below), 1e-12});
  SuspendedFloor windy = floor, on_ground_level = floor;
  windy.ventilation = 1e9;  // the void is outdoors
  CHECK(transmittance_of(windy) == WithinRel{2.0, 1e-6});
  on_ground_level.height = on_ground_level.ventilation = 0.0;  // the void is closed
  CHECK(transmittance_of(on_ground_level) ==
        WithinRel{1 / (0.5 + 1 / transmittance_of(floor.ground)), 1e-12});
}

TEST_CASE("air bricks take along what ISO 13370 says, by metre of wall") {
  // Source: ISO 13370, from memory: 1450 x 0.0015 m2/m x 4 m/s x 0.05 / width by m2 of floor, of
  // which half a width belongs to a wall.
  CHECK(loss_through(AirBricks{}) * 2 / 4.5 == WithinRel{1450 * 0.0015 * 4 * 0.05 / 4.5, 1e-12});
  CHECK(loss_through({0.003, 5.0, Shelter::exposed}) == WithinRel{1.0875, 1e-12});
  CHECK(loss_through({0.003, 5.0, Shelter::sheltered}) == WithinRel{0.2175, 1e-12});
}

}  // namespace quoin::materials
