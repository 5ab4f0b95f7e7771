// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <limits>
#include <string>

#include "materials/moist_air.hpp"
#include "tests/support/within.hpp"
#include "tools/judge.hpp"

namespace quoin::tools {
namespace {

using testing::WithinAbs;

/// A room at 20 degC and 50 % beside -5 degC, whose coldest spot has a temperature and a band.
SolvedVariant room_with_spot(double temperature, double band) {
  SolvedVariant solved;
  cases::Space room;
  room.name = "room";
  room.temperature = 20;
  room.humidity = 0.5;
  room.air = SpaceId(0);
  cases::Space yard;
  yard.name = "yard";
  yard.is = cases::SpaceKind::outside;
  yard.temperature = -5;
  yard.air = SpaceId(1);
  solved.variant.spaces.add(room);
  solved.variant.spaces.add(yard);
  solver::AirSurface surface;
  surface.air = SpaceId(0);
  surface.coldest.temperature = {temperature, band, true};
  surface.coldest.factor = {(temperature + 5) / 25, band / 25, true};
  solved.surface.airs.push_back(surface);
  return solved;
}

Verdict verdict(SolvedVariant solved, cases::Criterion criterion) {
  solved.variant.criteria = {std::move(criterion)};
  const auto all = verdicts(solved);
  REQUIRE(all.size() == 1);
  return all.front();
}

}  // namespace

TEST_CASE("the climate of DIN 4108-2 needs 12.6 degC and a factor of 0.70") {
  // Source: DIN 4108-2, 20 degC, 50 %, -5 degC: 12.6 and 0.70 printed; 12.6246 and 0.70498 by the
  // saturation formulae of ISO 13788.
  const auto air = humidities(room_with_spot(12.0, 0.01));
  REQUIRE(air.size() == 1);
  CHECK(air.front().mould_temperature == WithinAbs{12.6246, 5e-5});
  CHECK(air.front().factor_needed == WithinAbs{0.70498, 5e-6});
  CHECK(air.front().dew_point == WithinAbs{9.2690, 5e-5});
  CHECK(air.front().margin_to_mould == WithinAbs{12.0 - 12.6246, 5e-5});
  CHECK(air.front().margin_to_condensation == WithinAbs{12.0 - 9.2690, 5e-5});
}

TEST_CASE("at its highest safe humidity a spot has just 80 % at its surface") {
  const auto air = humidities(room_with_spot(11.0, 0.01)).front();
  CHECK(materials::surface_humidity(20, air.highest_safe_humidity, 11.0) == WithinAbs{0.8, 1e-12});
}

TEST_CASE("a room of unknown humidity has no humidity side and no humidity verdict") {
  SolvedVariant solved = room_with_spot(12.0, 0.01);
  solved.variant.spaces[SpaceId(0)].humidity.reset();
  CHECK(humidities(solved).empty());
  solved.variant.criteria = {{"mould", cases::SurfaceHumidityLimit{0.8}}};
  CHECK(verdicts(solved).empty());
  solved.variant.criteria = {{"fRsi", cases::FactorThreshold{0.7, {}}}};
  CHECK(verdicts(solved).size() == 1);
}

TEST_CASE("a criterion holds on the safe side of its limit and fails on the other") {
  const cases::Criterion mould{"mould", cases::SurfaceHumidityLimit{0.8}};
  CHECK(verdict(room_with_spot(12.7, 0.001), mould).holds);
  CHECK_FALSE(verdict(room_with_spot(12.5, 0.001), mould).holds);
  const cases::Criterion factor{"fRsi", cases::FactorThreshold{0.7, {}}};
  CHECK(verdict(room_with_spot(12.6, 0.001), factor).holds);
  CHECK_FALSE(verdict(room_with_spot(12.4, 0.001), factor).holds);
}

TEST_CASE("a margin is in percent of humidity or in the factor, negative on the unsafe side") {
  const Verdict mould =
      verdict(room_with_spot(12.0, 0.01), {"mould", cases::SurfaceHumidityLimit{0.8}});
  CHECK(mould.unit == "%RH");
  CHECK(mould.margin == WithinAbs{80 - 100 * materials::surface_humidity(20, 0.5, 12.0), 1e-9});
  CHECK(mould.margin < 0);
  const Verdict factor =
      verdict(room_with_spot(12.0, 0.01), {"fRsi", cases::FactorThreshold{0.7, {}}});
  CHECK(factor.unit == "1");
  CHECK(factor.margin == WithinAbs{17.0 / 25 - 0.7, 1e-12});
}

TEST_CASE("what a room asks of a surface is 80 percent or its strictest criterion") {
  SolvedVariant solved = room_with_spot(14.0, 0.01);
  solved.variant.criteria = {{"paper", cases::SurfaceHumidityLimit{0.7}},
                             {"condensation", cases::SurfaceHumidityLimit{1.0}}};
  const AirHumidity strict = humidities(solved).front();
  CHECK(strict.limit_by == "paper");
  CHECK(strict.limit == WithinAbs{0.7, 1e-12});
  CHECK(materials::surface_humidity(20, strict.highest_safe_humidity, 14.0) ==
        WithinAbs{0.7, 1e-12});
  solved.variant.criteria = {{"condensation", cases::SurfaceHumidityLimit{1.0}}};
  const AirHumidity lax = humidities(solved).front();  // the twin: 80 % is asked all the same
  CHECK(lax.limit_by == "80 %");
  CHECK(lax.limit == WithinAbs{0.8, 1e-12});
}

}  // namespace quoin::tools
