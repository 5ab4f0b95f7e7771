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

TEST_CASE("a layer of air is ventilated by the area of its openings") {
  // Source: ISO 6946, from memory: up to 500 mm2/m not, from 1500 well.
  const auto openings = [](double area) {
    return ventilation_of({0.05, HeatDirection::horizontal, area});
  };
  CHECK(openings(0) == Ventilation::none);
  CHECK(openings(500e-6) == Ventilation::none);
  CHECK(openings(501e-6) == Ventilation::slight);
  CHECK(openings(1499e-6) == Ventilation::slight);
  CHECK(openings(1500e-6) == Ventilation::well);
}

TEST_CASE("a slightly ventilated layer resists the less the more lies outside of it") {
  const AirLayer half{0.05, HeatDirection::horizontal, 1000e-6};
  const double still = air_layer_resistance(0.05, HeatDirection::horizontal);
  // By hand: half of what the layer and all outside of it lose by being open, 0.13 kept.
  CHECK(slightly_ventilated_resistance(half, 0.2) ==
        WithinAbs{still - (still + 0.2 - 0.13) / 2, 1e-12});
  CHECK(slightly_ventilated_resistance(half, 0.13) == WithinAbs{still / 2, 1e-12});
  CHECK(slightly_ventilated_resistance(half, 2.0) < 0);  // no layer can stand for it
}

}  // namespace quoin::materials
