// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "materials/material.hpp"
#include "materials/surface_resistance.hpp"
#include "tests/support/within.hpp"

namespace quoin::materials {

using testing::WithinAbs;

TEST_CASE("a layer of air conducts so that it resists what the standard prints") {
  // Source: table of ISO 6946, from memory: 25 mm and more resist 0.18 sideways, 0.16 upwards; 50
  // mm downwards 0.21; 5 mm 0.11 in any direction. Printed to two decimals.
  const auto resistance = [](double thickness, HeatDirection heat) {
    return thickness / air_of({thickness, heat}).conductivity.value;
  };
  CHECK(resistance(0.05, HeatDirection::horizontal) == WithinAbs{0.18, 0.0051});
  CHECK(resistance(0.05, HeatDirection::up) == WithinAbs{0.16, 0.0051});
  CHECK(resistance(0.05, HeatDirection::down) == WithinAbs{0.21, 0.0051});
  CHECK(resistance(0.005, HeatDirection::horizontal) == WithinAbs{0.11, 0.0051});
}

TEST_CASE("a layer of air knows where its value comes from, and lets vapour through") {
  const Material air = air_of({0.05, HeatDirection::horizontal});
  CHECK(air.conductivity.source == "ISO 6946");
  CHECK(air.conductivity.confidence == Confidence::memory);
  REQUIRE(air.vapour_resistance_dry);
  CHECK(air.vapour_resistance_dry->value == 1.0);
  REQUIRE(air.air_layer);
  CHECK(air.air_layer->thickness == 0.05);
}

}  // namespace quoin::materials
