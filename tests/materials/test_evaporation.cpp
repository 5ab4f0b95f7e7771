// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "materials/behind.hpp"
#include "materials/clear_sky.hpp"
#include "materials/evaporation.hpp"
#include "materials/moist_air.hpp"
#include "materials/surface_resistance.hpp"
#include "tests/support/within.hpp"

using namespace quoin::materials;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

TEST_CASE("a clear night takes about 23 W/m2 from a wall in the open") {
  // By hand: half of 4.62 W/m2K x 0.9 x 11 K.
  const double resistance = outside_resistance(4.0);
  CHECK(cooling_by({11.0, 0.5}, resistance) / resistance == WithinAbs{22.85, 0.1});
  CHECK(cooling_by({11.0, 1.0}, resistance) == 2.0 * cooling_by({11.0, 0.5}, resistance));
  CHECK(cooling_by({11.0, 0.0}, resistance) == 0.0);
  CHECK(cooling_by({11.0, 0.5}, outside_resistance(0.3)) > cooling_by({11.0, 0.5}, resistance));
}

TEST_CASE("water leaves a bare wet surface as fast as the air film lets it") {
  // By hand: convection 16 W/m2K: 1.096e-7 kg/(m2 s Pa) x (psat(4) 812.8 - 600 Pa).
  CHECK(evaporation_rate({0.0, 1.0}, 4.0, 600.0, 16.0) == WithinRel{2.333e-5, 0.002});
  // A coat of 1 m of still air is 500 times the film: nearly nothing passes.
  CHECK(evaporation_rate({1.0, 1.0}, 4.0, 600.0, 16.0) ==
        WithinRel{212.8 / (1.0 / 1.096e-7 + 5e9), 0.002});
}

TEST_CASE("no water leaves a surface in balance with the air, and it condenses on a colder one") {
  const double pressure = 0.8 * saturation_pressure(10.0);
  CHECK(evaporation_rate({0.05, 0.8}, 10.0, pressure, 16.0) == WithinAbs{0.0, 1e-20});
  CHECK(evaporation_rate({0.0, 1.0}, 4.0, 1.2 * saturation_pressure(4.0), 16.0) < 0.0);
}

TEST_CASE("the more stands before a wall, the less heat reaches it") {
  CHECK(resistance_behind(Behind::curtain) < resistance_behind(Behind::furniture));
  CHECK(resistance_behind(Behind::furniture) == 0.5);         // DIN technical report (memory)
  CHECK(resistance_behind(Behind::fitted_furniture) == 1.0);  // the same
}

}  // namespace
