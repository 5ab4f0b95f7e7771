// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <initializer_list>

#include "materials/moist_air.hpp"
#include "tests/support/csv.hpp"
#include "tests/support/within.hpp"

using namespace quoin::materials;
using quoin::testing::csv_of;
using quoin::testing::CsvRow;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

constexpr double half_last_digit = 0.5000001;  // of a printed value, and a breath for its rounding

TEST_CASE("saturation pressure agrees with the published formulas from -20 to 40 degC") {
  const auto table = csv_of(QUOIN_SOURCE_DIR "/tests/materials/data/psat_values.csv");
  CHECK(table.rows().size() == 31);
  for (const CsvRow& row : table.rows()) {
    const double temperature = row.number("theta_C");
    CAPTURE(temperature);
    // Printed to 0.001 Pa.
    CHECK(saturation_pressure(temperature) ==
          WithinAbs{row.number("psat_Pa"), half_last_digit * 1e-3});
  }
}

TEST_CASE("vapour over water instead of ice below freezing would miss the published values") {
  const double over_water_at_minus_10 = 610.5 * std::exp(17.269 * -10.0 / (237.3 - 10.0));
  CHECK_FALSE(over_water_at_minus_10 == WithinRel{saturation_pressure(-10.0), 0.05});
}

TEST_CASE("saturation pressure passes freezing without a jump and always grows") {
  CHECK(saturation_pressure(0.0) == 610.5);
  CHECK(saturation_pressure(-1e-9) == WithinRel{610.5, 1e-9});
  double former = saturation_pressure(-40.0);
  for (double temperature = -39.75; temperature <= 60.0; temperature += 0.25) {
    CAPTURE(temperature);
    CHECK(saturation_pressure(temperature) > former);
    former = saturation_pressure(temperature);
  }
}

TEST_CASE(
    "saturation temperature is the inverse of saturation pressure on both sides of freezing") {
  for (double temperature = -40.0; temperature <= 60.0; temperature += 0.5) {
    CAPTURE(temperature);
    // A closed form: a few roundings of values up to 300.
    CHECK(saturation_temperature(saturation_pressure(temperature)) ==
          WithinAbs{temperature, 1e-11});
  }
}

TEST_CASE("dew points agree with those computed outside the project") {
  struct Row {
    double temperature, humidity, dew_point;
  };
  // Source: ISO 13788 formulas (memory), evaluated independently to 4 decimals.
  for (const Row& row : std::initializer_list<Row>{{20, 0.50, 9.2690},
                                                   {20, 0.60, 12.0039},
                                                   {20, 0.65, 13.2239},
                                                   {21, 0.50, 10.1872},
                                                   {22, 0.55, 12.5486}}) {
    CAPTURE(row.temperature);
    CAPTURE(row.humidity);
    CHECK(dew_point(row.temperature, row.humidity) ==
          WithinAbs{row.dew_point, half_last_digit * 1e-4});
  }
}

TEST_CASE("the dew point of saturated air is its temperature, below freezing too") {
  for (const double temperature : {-15.0, -0.5, 0.0, 0.5, 18.5}) {
    CHECK(dew_point(temperature, 1.0) == WithinAbs{temperature, 1e-11});
    CHECK(dew_point(temperature, 0.99) < temperature);
  }
}

TEST_CASE("lowest surface temperatures and factors agree with the table for constant climates") {
  const auto table = csv_of(QUOIN_SOURCE_DIR "/tests/materials/data/frsi_min_constant_climate.csv");
  CHECK(table.rows().size() == 40);
  for (const CsvRow& row : table.rows()) {
    const double inside = row.number("theta_i");
    const double humidity = row.number("RH_i");
    const double outside = row.number("theta_e");
    CAPTURE(humidity);
    CAPTURE(outside);
    const double printed = half_last_digit * 1e-4;
    CHECK(lowest_safe_surface_temperature(inside, humidity, 0.8) ==
          WithinAbs{row.number("theta_si_min_mould"), printed});
    CHECK(lowest_safe_surface_temperature(inside, humidity, 1.0) ==
          WithinAbs{row.number("theta_dew"), printed});
    CHECK(factor_needed(inside, humidity, outside, 0.8) ==
          WithinAbs{row.number("fRsi_min_mould"), printed});
    CHECK(factor_needed(inside, humidity, outside, 1.0) ==
          WithinAbs{row.number("fRsi_min_condensation"), printed});
  }
}

TEST_CASE("the climate of DIN 4108-2 needs a surface of 12.6 degC and a factor of 0.70") {
  // Source: DIN 4108-2 prints 12.6 and 0.70; the further digits were computed independently.
  CHECK(lowest_safe_surface_temperature(20, 0.5, 0.8) ==
        WithinAbs{12.6246, half_last_digit * 1e-4});
  CHECK(factor_needed(20, 0.5, -5, 0.8) == WithinAbs{0.70498, half_last_digit * 1e-5});
  // Condensation in place of mould would ask for much less.
  CHECK_FALSE(factor_needed(20, 0.5, -5, 1.0) == WithinAbs{0.70, 0.05});
}

TEST_CASE("the published thermal-bridge example has a factor of 0.51") {
  // Source: DA DB-HE/2: surface 15.3, outside 10.4, inside 20 degC; printed to 0.01.
  CHECK(temperature_factor(15.3, 20, 10.4) == WithinAbs{0.51, 0.005});
  CHECK_FALSE(temperature_factor(15.3, 10.4, 20) == WithinAbs{0.51, 0.005});
}

TEST_CASE("a surface at its lowest safe temperature has just the humidity of the limit") {
  for (const double limit : {0.6, 0.8, 1.0}) {
    const double surface = lowest_safe_surface_temperature(18.5, 0.62, limit);
    CHECK(surface_humidity(18.5, 0.62, surface) == WithinRel{limit, 1e-12});
    CHECK(highest_safe_humidity(18.5, surface, limit) == WithinRel{0.62, 1e-12});
  }
}

TEST_CASE("a surface below the dew point has a humidity above 1, so that the margin shows") {
  // psat(18.5) 2128.4 Pa x 0.62 over psat(9) 1147.1 Pa, by the formulas of ISO 13788 by hand.
  CHECK(surface_humidity(18.5, 0.62, 9.0) == WithinRel{1.1504, 1e-3});
}

TEST_CASE("no air is wetter than saturated, however warm the surface") {
  CHECK(highest_safe_humidity(20, 35, 0.8) == 1.0);
  CHECK(highest_safe_humidity(20, 20, 0.8) == 0.8);
}

TEST_CASE("a kitchen at 18.5 degC and 62 % holds 4.8 g/m3 more than air of 2 degC and 90 %") {
  // By hand: 0.62 x 2128.4 / (461.5 x 291.65) - 0.90 x 705.29 / (461.5 x 275.15) = 9.804 - 4.999
  // g/m3
  CHECK(moisture_excess(18.5, 0.62, 2.0, 0.90) == WithinAbs{4.805e-3, 5e-6});
  CHECK(moisture_excess(2.0, 0.90, 18.5, 0.62) == -moisture_excess(18.5, 0.62, 2.0, 0.90));
  // Without the kelvins of the two temperatures the excess is another.
  const double at_one_temperature =
      (0.62 * saturation_pressure(18.5) - 0.90 * saturation_pressure(2.0)) / (461.5 * 291.65);
  CHECK_FALSE(at_one_temperature == WithinAbs{4.805e-3, 5e-5});
}

TEST_CASE("the critical humidity for mould agrees with the correlation published in 1999") {
  const auto table = csv_of(QUOIN_SOURCE_DIR "/tests/materials/data/mould_critical_rh_1999.csv");
  CHECK(table.rows().size() == 31);
  for (const CsvRow& row : table.rows()) {
    const double temperature = row.number("theta_C");
    CAPTURE(temperature);
    CHECK(100.0 * critical_mould_humidity(temperature) ==
          WithinAbs{row.number("RHcrit"), half_last_digit * 1e-3});
  }
  CHECK(critical_mould_humidity(-5.0) == 1.0);
  CHECK_FALSE(100.0 * critical_mould_humidity(5.0) == WithinAbs{80.0, 5.0});  // not 80 % when cold
}

}  // namespace
