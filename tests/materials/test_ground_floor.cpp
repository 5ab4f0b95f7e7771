// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

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

}  // namespace quoin::materials
