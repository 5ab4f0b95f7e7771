// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <initializer_list>

#include "materials/surface_resistance.hpp"
#include "tests/support/csv.hpp"
#include "tests/support/within.hpp"

using namespace quoin::materials;
using quoin::testing::csv_of;
using quoin::testing::CsvRow;
using quoin::testing::WithinAbs;

namespace {

Face face(Side side, Facing facing = Facing::sideways, Part part = Part::fabric) {
  return {.side = side, .facing = facing, .part = part, .wind = {}};
}

TEST_CASE("heat flow: the inside resistance follows the direction of the heat") {
  // Source: ISO 6946 (memory): 0.10 upwards, 0.13 horizontal, 0.17 downwards.
  CHECK(surface_resistance(face(Side::inside, Facing::down), Purpose::heat_flow) == 0.10);
  CHECK(surface_resistance(face(Side::inside, Facing::sideways), Purpose::heat_flow) == 0.13);
  CHECK(surface_resistance(face(Side::inside, Facing::up), Purpose::heat_flow) == 0.17);
}

TEST_CASE("heat flow: glazing and frames have the resistance of any other surface") {
  for (const Part part : {Part::fabric, Part::frame, Part::glazing}) {
    CHECK(surface_resistance(face(Side::inside, Facing::sideways, part), Purpose::heat_flow) ==
          0.13);
  }
}

TEST_CASE("heat flow: heat enters an unheated space, so that an attic floor passes it upwards") {
  CHECK(surface_resistance(face(Side::unheated, Facing::up), Purpose::heat_flow) == 0.10);
  CHECK(surface_resistance(face(Side::unheated, Facing::down), Purpose::heat_flow) == 0.17);
  CHECK(surface_resistance(face(Side::unheated, Facing::sideways), Purpose::heat_flow) == 0.13);
}

TEST_CASE(
    "surface temperature: 0.25 on the fabric, 0.13 on glazing and frames, whatever they face") {
  // Source: ISO 13788 (memory).
  for (const Side side : {Side::inside, Side::unheated}) {
    for (const Facing facing : {Facing::sideways, Facing::up, Facing::down}) {
      const auto resistance = [&](Part part) {
        return surface_resistance(face(side, facing, part), Purpose::surface_temperature);
      };
      CHECK(resistance(Part::fabric) == 0.25);
      CHECK(resistance(Part::frame) == 0.13);
      CHECK(resistance(Part::glazing) == 0.13);
    }
  }
}

TEST_CASE("outside the resistance is 0.04 for both purposes, or follows the wind") {
  for (const Purpose purpose : {Purpose::heat_flow, Purpose::surface_temperature}) {
    for (const Facing facing : {Facing::sideways, Facing::up, Facing::down}) {
      CHECK(surface_resistance(face(Side::outside, facing), purpose) == 0.04);
    }
    Face windy = face(Side::outside);
    windy.wind = 1.0;
    CHECK(surface_resistance(windy, purpose) == outside_resistance(1.0));
  }
  Face draught = face(Side::inside);
  draught.wind = 1.0;  // the wind is that outside
  CHECK(surface_resistance(draught, Purpose::heat_flow) == 0.13);
}

TEST_CASE("plane elements have the factors of the published examples with 0.25") {
  struct Row {
    double transmittance, factor;
  };
  // Source: published examples of plane elements, fRsi = (1/U - Rsi) / (1/U), printed to 0.001.
  const auto factor = [](double transmittance, Purpose purpose) {
    return 1.0 - transmittance * surface_resistance(face(Side::inside), purpose);
  };
  for (const Row& row :
       std::initializer_list<Row>{{0.2899, 0.928}, {0.2843, 0.929}, {0.2553, 0.936}}) {
    CAPTURE(row.transmittance);
    CHECK(factor(row.transmittance, Purpose::surface_temperature) == WithinAbs{row.factor, 5e-4});
    // The resistance for heat flow would overstate it.
    CHECK_FALSE(factor(row.transmittance, Purpose::heat_flow) == WithinAbs{row.factor, 0.02});
  }
}

TEST_CASE("the outside resistance agrees with formula and table of the standard in any wind") {
  const auto table = csv_of(QUOIN_SOURCE_DIR "/tests/materials/data/iso6946_rse_wind.csv");
  CHECK(table.rows().size() == 7);
  for (const CsvRow& row : table.rows()) {
    const double wind = row.number("v_m_s");
    CAPTURE(wind);
    CHECK(outside_resistance(wind) == WithinAbs{row.number("Rse_calc"), 0.5001e-4});  // to 1e-4
    CHECK(outside_resistance(wind) == WithinAbs{row.number("Rse_table"), 0.0051});    // to 0.01
  }
  // Radiation at 10 instead of 0 degC would miss the computed column.
  CHECK_FALSE(1.0 / (8.0 + 0.9 * 5.147) == WithinAbs{outside_resistance(1.0), 1e-3});
}

TEST_CASE("air layers agree with formula and table of the standard in each direction") {
  const auto table = csv_of(QUOIN_SOURCE_DIR "/tests/materials/data/iso6946_air_layers.csv");
  CHECK(table.rows().size() == 8);
  for (const CsvRow& row : table.rows()) {
    const double thickness = row.number("thickness_mm") / 1000.0;
    CAPTURE(thickness);
    const auto agrees = [&](HeatDirection direction, const char* computed, const char* printed) {
      const double resistance = air_layer_resistance(thickness, direction);
      CHECK(resistance == WithinAbs{row.number(computed), 0.5001e-4});  // to 1e-4
      CHECK(resistance == WithinAbs{row.number(printed), 0.0051});      // to 0.01
    };
    agrees(HeatDirection::up, "R_up_calc", "R_up_table");
    agrees(HeatDirection::horizontal, "R_horiz_calc", "R_horiz_table");
    agrees(HeatDirection::down, "R_down_calc", "R_down_table");
  }
}

TEST_CASE("heat sinks through a wide air layer with more difficulty than it rises") {
  const double up = air_layer_resistance(0.1, HeatDirection::up);
  const double across = air_layer_resistance(0.1, HeatDirection::horizontal);
  const double down = air_layer_resistance(0.1, HeatDirection::down);
  CHECK(up < across);
  CHECK(across < down);
}

}  // namespace
