// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "materials/humidity_source.hpp"
#include "tests/support/within.hpp"

using namespace quoin::materials;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

TEST_CASE("humidity classes have the upper limits of the standard, falling to nothing at 20 degC") {
  // Source: ISO 13788 (memory): 270, 540, 810, 1080 Pa at 0 degC outside and below.
  const double limits[] = {270.0, 540.0, 810.0, 1080.0};
  for (int number = 1; number <= 4; ++number) {
    const HumidityClass source{static_cast<double>(number), 1.0};
    CAPTURE(number);
    for (const double outside : {-15.0, 0.0})
      CHECK(vapour_excess(source, 20.0, outside) == limits[number - 1]);
    CHECK(vapour_excess(source, 20.0, 10.0) == limits[number - 1] / 2);
    CHECK(vapour_excess(source, 20.0, 20.0) == 0.0);
    CHECK(vapour_excess(source, 20.0, 25.0) == 0.0);
    // The same limits as masses, 0.002 kg/m3 a class, printed to one digit: half of it.
    CHECK(vapour_pressure(0.002 * number, 20.0) == WithinRel{limits[number - 1], 0.01});
    CHECK_FALSE(vapour_excess(source, 20.0, 10.0) == WithinAbs{limits[number - 1], 1.0});
  }
}

TEST_CASE("the fifth humidity class adds what is stated, as no limit is known") {
  const HumidityClass pool{5.0, 1.0, 1500.0};
  CHECK(vapour_excess(pool, 28.0, -5.0) == 1500.0);
  CHECK(vapour_excess(pool, 28.0, 10.0) == 750.0);
  CHECK_FALSE(objection(HumiditySource(pool)));
  CHECK(objection(HumiditySource(HumidityClass{5.0, 1.0})));
  CHECK(objection(HumiditySource(HumidityClass{3.0, 1.0, 1500.0})));
}

TEST_CASE("the safety factor of the older edition counts on what the household adds alone") {
  const double plain = inside_humidity(HumidityClass{3.0, 1.0}, 20.0, 0.0, 0.8);
  const double safer = inside_humidity(HumidityClass{3.0, 1.10}, 20.0, 0.0, 0.8);
  const double outside_alone = 0.8 * saturation_pressure(0.0) / saturation_pressure(20.0);
  CHECK((safer - outside_alone) / (plain - outside_alone) == WithinRel{1.10, 1e-12});
  CHECK_FALSE(safer == WithinRel{1.10 * plain, 0.01});  // not on all of the vapour
}

TEST_CASE("twice the air change carries away the same moisture at half the excess") {
  MoistureProduction once{300.0 / 3.6e6, 150.0, 0.5 / 3600.0, 1.0};
  MoistureProduction twice = once;
  twice.air_change *= 2.0;
  CHECK(vapour_excess(twice, 20.0, 0.0) == vapour_excess(once, 20.0, 0.0) / 2.0);
  // By hand: 0.3 / 75 kg/m3 x 461.5 J/(kg K) x 293.15 K.
  CHECK(vapour_excess(once, 20.0, 0.0) == WithinAbs{541.15, 0.01});
  CHECK(vapour_excess(once, 20.0, 15.0) == vapour_excess(once, 20.0, 0.0));  // windows stay as told
  once.summer_air_change = 2.5 / 3600.0;                                     // 1.5 half way
  CHECK(vapour_excess(once, 20.0, 10.0) == WithinRel{vapour_excess(once, 20.0, 0.0) / 3.0, 1e-12});
}

TEST_CASE("a logged household gives itself back, less in warmer weather, none in summer") {
  const LoggedReading logged{19.0, 0.58, 5.0, 0.85};
  CHECK(inside_humidity(logged, 19.0, 5.0, 0.85) == WithinRel{0.58, 1e-12});
  CHECK(vapour_excess(logged, 19.0, 12.5) == WithinRel{logged_excess(logged) / 2.0, 1e-12});
  CHECK(vapour_excess(logged, 19.0, 20.0) == 0.0);
}

TEST_CASE("impossible sources are objected to, possible ones are not") {
  CHECK(objection(HumidityClass{2.5, 1.0}));
  CHECK_FALSE(objection(HumidityClass{2.0, 1.0}));
  CHECK(objection(LoggedReading{18.0, 0.30, 10.0, 0.90}));
  CHECK_FALSE(objection(LoggedReading{18.0, 0.60, 10.0, 0.90}));
  CHECK(objection(LoggedReading{18.0, 0.60}));  // half of it
}

}  // namespace
