// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <string_view>

#include "materials/criterion.hpp"
#include "materials/published_tests.hpp"
#include "tests/support/within.hpp"

using namespace quoin::materials;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

const PublishedTest& guide(std::string_view name) {
  for (const PublishedTest& published : published_tests()) {
    if (published.guide == name) return published;
  }
  FAIL(name);
  return published_tests().front();
}

TEST_CASE("a surface at its lowest temperature just passes each test, a colder one fails") {
  const double pressure = 0.62 * saturation_pressure(18.5);
  const Sides sides{18.5, 2.0};
  for (const Test& test : {Test(SurfaceHumidityLimit{0.8}), Test(SurfaceHumidityLimit{1.0}),
                           Test(CriticalHumidity{}), Test(FactorThreshold{0.7, {}})}) {
    CAPTURE(unit_of(test));
    const double lowest = lowest_temperature(test, pressure, sides);
    const auto margin_at = [&](double temperature) {
      return margin(test, {temperature, (temperature - 2.0) / 16.5, pressure});
    };
    // The margins are of the order of 100 points: ten digits of them.
    CHECK(margin_at(lowest) == WithinAbs{0.0, 1e-8});
    CHECK(margin_at(lowest - 0.1) < 0.0);
    CHECK(margin_at(lowest + 0.1) > 0.0);
  }
}

TEST_CASE("the pressure a surface stands is that at which it just passes") {
  for (const double temperature : {-2.0, 3.0, 9.0, 15.0, 21.0}) {
    for (const Test& test : {Test(SurfaceHumidityLimit{0.8}), Test(CriticalHumidity{})}) {
      const double most = highest_pressure(test, temperature);
      CHECK(margin(test, {temperature, 0.0, most}) == WithinAbs{0.0, 1e-10});
      CHECK(lowest_temperature(test, most, {}) == WithinAbs{temperature, 1e-9});
    }
  }
  CHECK(std::isinf(highest_pressure(FactorThreshold{}, 10.0)));
}

TEST_CASE("mould needs more humidity on a cold surface than 80 %, the same on a warm one") {
  const double pressure = 900.0;
  const Sides sides{18.0, 0.0};
  // At 9 degC it takes 82.8 % (correlation of 1999), so a surface may be colder than for 80 %.
  const double by_temperature = lowest_temperature(CriticalHumidity{}, pressure, sides);
  const double fixed = lowest_temperature(SurfaceHumidityLimit{0.8}, pressure, sides);
  CHECK(by_temperature < fixed);
  CHECK(fixed - by_temperature == WithinAbs{0.5, 0.3});
  CHECK(margin(CriticalHumidity{}, {20.0, 0.0, 1800.0}) ==
        WithinAbs{margin(SurfaceHumidityLimit{0.8}, {20.0, 0.0, 1800.0}), 0.05});
}

TEST_CASE("the guide of DIN 4108-2 is the factor that its own climate asks for") {
  // Source: DIN 4108-2: 20 degC, 50 %, -5 degC outside give 12.6 degC and 0.70 (read).
  const Sides sides{20.0, -5.0};
  const double pressure = 0.5 * saturation_pressure(20.0);
  const double lowest = lowest_temperature(guide("ISO 13788 mould").test, pressure, sides);
  CHECK(lowest == WithinAbs{12.6246, 5.1e-5});  // computed independently, to 4 decimals
  CHECK(lowest_temperature(guide("DIN 4108-2").test, pressure, sides) ==
        WithinAbs{lowest, 0.25});  // 0.70 is rounded to 0.01 of 25 K
  CHECK_FALSE(lowest_temperature(guide("IP 1/06 dwellings").test, pressure, sides) ==
              WithinAbs{lowest, 0.25});
}

TEST_CASE("every published threshold of a factor says the Rsi it belongs to and its source") {
  for (const PublishedTest& published : published_tests()) {
    CAPTURE(published.guide);
    CHECK_FALSE(published.source.empty());
    if (const auto* threshold = std::get_if<FactorThreshold>(&published.test))
      CHECK(threshold->resistance.has_value());
  }
}

}  // namespace
