// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "cases/read.hpp"
#include "materials/moist_air.hpp"
#include "tests/support/within.hpp"
#include "tests/tools/small_case.hpp"
#include "tools/answer/run.hpp"

using namespace quoin;
using geometry::SpaceId;
using testing::WithinAbs;
using testing::WithinRel;
using tools::SolvedVariant;
using tools::Threshold;

namespace {

// A climate by invention, cool and temperate; the humidity outside is that of no place either.
cases::Climate climate() {
  cases::Climate year;
  year.outside_temperature = {4, 4, 6, 8, 11, 14, 17, 16, 14, 10, 6, 4.5};
  year.outside_humidity = {.88, .86, .82, .78, .76, .77, .78, .79, .82, .85, .87, .88};
  return year;
}

cases::Variant corner_with_year() {
  cases::Variant variant = testing::corner_variant("as found", 0.0, false);
  cases::Space& hall = variant.spaces[SpaceId(0)];
  hall.moisture = materials::HumidityClass{3.0, 1.0};
  variant.climate = climate();
  variant.criteria = {{"mould", cases::SurfaceHumidityLimit{0.8}},
                      {"wets", cases::SurfaceHumidityLimit{1.0}},
                      {"growth", cases::CriticalHumidity{}},
                      {"fRsi", cases::FactorThreshold{0.75, {}}}};  // the same all year
  return variant;
}

SolvedVariant solved(const cases::Variant& variant) { return tools::solved(variant, {}); }

const solver::Spot& coldest(const SolvedVariant& one) { return one.surface.airs.front().coldest; }

TEST_CASE("a month of the year is what solving the section in that month gives") {
  const SolvedVariant year = solved(corner_with_year());
  REQUIRE(year.years.size() == 1);
  cases::Variant march = corner_with_year();
  march.spaces[SpaceId(1)].temperature = 6.0;
  const SolvedVariant alone = solved(march);
  // The same grids, the same solves: rounding of the weighted sums.
  CHECK(year.years[0].spots[0].temperature[2] == WithinAbs{coldest(alone).temperature.value, 1e-6});
  CHECK_FALSE(year.years[0].spots[0].temperature[0] ==
              WithinAbs{coldest(alone).temperature.value, 0.1});
}

TEST_CASE("the table of the year agrees with the formulas of the standard by hand") {
  const SolvedVariant year = solved(corner_with_year());
  const tools::MonthAir& january = year.years[0].months[0];
  // 4 degC, 88 %: psat 812.8 Pa. Class 3: 810 x (1 - 4/20) = 648 Pa. By hand, to 0.5 Pa.
  CHECK(january.outside_pressure == WithinAbs{715.3, 0.5});
  CHECK(january.inside_pressure == WithinAbs{1363.3, 0.5});
  const tools::YearOfCriterion& mould = year.years[0].criteria[0];
  CHECK(mould.criterion == "mould");
  // psat 1363.3 / 0.8 = 1704.1 Pa at 15.00 degC; (15.00 - 4) / 14 = 0.786.
  CHECK(mould.lowest_temperature[0] == WithinAbs{15.00, 0.02});
  CHECK(mould.monthly_factor_needed[0] == WithinAbs{0.786, 0.002});
  CHECK(mould.factor_needed ==
        *std::max_element(mould.monthly_factor_needed.begin(), mould.monthly_factor_needed.end()));
  const auto& wets = year.years[0].criteria[1];
  CHECK(wets.monthly_factor_needed[0] < mould.monthly_factor_needed[0]);
}

TEST_CASE("months at risk are those in which the spot is colder than it must be") {
  const SolvedVariant year = solved(corner_with_year());
  const auto& spot = year.years[0].spots[0];
  REQUIRE(year.years[0].criteria.size() == 3);  // those that look at the humidity
  for (std::size_t c = 0; c < 3; ++c) {
    const auto& judged = year.years[0].criteria[c];
    for (std::size_t month = 0; month < 12; ++month) {
      const bool cold = spot.temperature[month] < judged.lowest_temperature[month];
      const auto& months = judged.months_at_risk[0];
      CHECK(cold == (std::find(months.begin(), months.end(), month) != months.end()));
    }
  }
  // A bare brick corner and a household of class 3: January breeds mould; nothing wets in July.
  const auto has = [](const std::vector<std::size_t>& months, std::size_t month) {
    return std::find(months.begin(), months.end(), month) != months.end();
  };
  CHECK(has(year.years[0].criteria[0].months_at_risk[0], 0));
  CHECK_FALSE(has(year.years[0].criteria[1].months_at_risk[0], 6));
}

TEST_CASE("a case without a climate has no year") {
  CHECK(solved(testing::corner_variant("as found", 0.0, false)).years.empty());
}

TEST_CASE("at its highest humidity and at its lowest temperature a room just passes") {
  const cases::Variant variant = testing::corner_variant("as found", 0.0, true);
  const SolvedVariant first = solved(variant);
  REQUIRE(first.enough.size() == first.verdicts.size());
  REQUIRE(first.enough[0].highest_humidity);
  REQUIRE(first.enough[0].lowest_temperature);
  CHECK_FALSE(first.enough[1].highest_humidity);  // a factor does not look at the humidity

  cases::Variant humid = variant;
  humid.spaces[SpaceId(0)].humidity = *first.enough[0].highest_humidity;
  CHECK(solved(humid).verdicts[0].margin == WithinAbs{0.0, 1e-6});  // points of humidity

  cases::Variant cool = variant;
  cases::Space& room = cool.spaces[SpaceId(0)];
  const double pressure = *room.humidity * materials::saturation_pressure(room.temperature);
  room.temperature = *first.enough[0].lowest_temperature;
  room.humidity = pressure / materials::saturation_pressure(room.temperature);
  CHECK(solved(cool).verdicts[0].margin == WithinAbs{0.0, 1e-4});
  room.temperature -= 1.0;
  room.humidity = pressure / materials::saturation_pressure(room.temperature);
  CHECK(solved(cool).verdicts[0].margin < -1.0);
}

TEST_CASE("the thickness that is enough is solved, and a little less is not enough") {
  cases::Variant variant = testing::corner_variant("lined", 0.0, true);
  variant.criteria = {{"fRsi", cases::FactorThreshold{0.70, {}}}};
  variant.enough.thickness = cases::ThicknessRange{"lining", 0.002, 0.2};
  const SolvedVariant first = solved(variant);
  REQUIRE(first.enough[0].thickness);
  REQUIRE(first.enough[0].thickness->kind == Threshold::Kind::found);
  const double enough = first.enough[0].thickness->value;
  const auto margin_at = [&](double thickness) {
    cases::Variant other = variant;
    auto& corner = std::get<geometry::Corner>(*other.recipe);
    corner.layers[0].thickness = thickness;
    other.sheet = geometry::drawing_of(corner).sheet;
    other.enough = {};
    return solved(other).verdicts[0].margin;
  };
  CHECK(margin_at(enough) == WithinAbs{0.0, 0.002});  // 0.1 mm, and the band of fRsi
  CHECK(margin_at(enough + 0.005) > 0.0);
  CHECK(margin_at(enough - 0.003) < 0.0);

  variant.criteria = {{"fRsi", cases::FactorThreshold{0.99, {}}}};
  CHECK(solved(variant).enough[0].thickness->kind == Threshold::Kind::holds_never);
  variant.criteria = {{"fRsi", cases::FactorThreshold{0.2, {}}}};
  CHECK(solved(variant).enough[0].thickness->kind == Threshold::Kind::holds_always);
}

TEST_CASE("the moisture that masonry may have is solved, and a little more is too much") {
  cases::Variant variant = testing::corner_variant("as found", 0.1, false);
  variant.criteria = {{"fRsi", cases::FactorThreshold{0.50, {}}}};
  variant.enough.moisture_of = "wall brick";
  const SolvedVariant first = solved(variant);
  REQUIRE(first.enough[0].moisture);
  REQUIRE(first.enough[0].moisture->kind == Threshold::Kind::found);
  const double most = first.enough[0].moisture->value;
  const auto margin_at = [&](double moisture) {
    cases::Variant other = testing::corner_variant("as found", moisture, false);
    other.criteria = variant.criteria;
    return solved(other).verdicts[0].margin;
  };
  CHECK(margin_at(most - 0.01) > 0.0);
  CHECK(margin_at(most + 0.01) < 0.0);
}

TEST_CASE("a risk is graded the higher the more humid the room, always with the humidity assumed") {
  double before = -1.0;
  for (const double humidity : {0.3, 0.45, 0.6, 0.75}) {
    cases::Variant variant = testing::corner_variant("as found", 0.0, false);
    variant.spaces[SpaceId(0)].humidity = humidity;
    const SolvedVariant one = solved(variant);
    REQUIRE(one.verdicts[0].grade);
    CHECK(one.verdicts[0].grade->humidity == humidity);
    CHECK(one.verdicts[0].grade->chance > before);
    before = one.verdicts[0].grade->chance;
    CHECK((one.verdicts[0].margin < 0.0) == (before > 0.5));  // even at the limit
    CHECK_FALSE(one.verdicts[1].grade);                       // fRsi looks at no humidity
  }
  CHECK(before > 0.9);
}

TEST_CASE("a corner has another factor with another Rsi: a threshold without it means nothing") {
  // Computed outside the project by two other discretisations: 330 mm of 0.77, Rse 0.04, legs 1 m:
  // 0.634 with Rsi 0.13, 0.500 with 0.25.
  cases::Variant variant = testing::corner_variant("brick alone", 0.0, false);
  variant.regions[geometry::RegionId(0)].material.conductivity.value = 0.77;
  auto& corner = std::get<geometry::Corner>(*variant.recipe);
  corner.layers = {{geometry::RegionId(0), 0.33}};
  variant.sheet = geometry::drawing_of(corner).sheet;
  variant.probes.clear();
  CHECK(coldest(solved(variant)).factor.value == WithinAbs{0.4995, 0.0015});
  variant.spaces[SpaceId(0)].resistance = 0.13;
  CHECK(coldest(solved(variant)).factor.value == WithinAbs{0.634, 0.002});
}

// A flat wall of a room, its left half before outdoors, its right half before a store.
std::string wall_before_two(double store) {
  return fmt::format(R"(quoin: 1
title: A wall before two airs
spaces:
  room: {{is: inside, temperature: 20, humidity: 50}}
  outdoors: {{is: outside, temperature: 10}}
  store: {{is: inside, temperature: {}, humidity: 50}}
materials:
  stone: {{conductivity: 0.8, density: 1800}}
section:
  sheet:
    - {{fill: stone, x: [0, 2000], y: [0, 300]}}
    - {{fill: room, x: [0, 2000], y: [300, 400]}}
    - {{fill: outdoors, x: [0, 1000], y: [-100, 0]}}
    - {{fill: store, x: [1000, 2000], y: [-100, 0]}}
climate:
  outside temperature: [0, 2, 6, 8, 12, 16, 18, 17, 14, 10, 6, 2]
  outside humidity: [88, 86, 82, 78, 76, 77, 78, 79, 82, 85, 87, 88]
  inside temperature: [20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20, 20]
)",
                     store);
}

TEST_CASE("the place that is coldest only in some months is found") {
  const auto year_of = [](double store) {
    return solved(cases::case_of(wall_before_two(store), "wall.yaml").variants.front()).years.at(0);
  };
  // As stated the store is cold. In every month of the year it is as warm as the room.
  const tools::Year year = year_of(0);
  REQUIRE(year.spots.size() == 2);
  CHECK(year.spots[0].spot.place.x == WithinAbs{0.0, 1e-9});
  CHECK(year.spots[1].spot.place.x == WithinAbs{2.0, 1e-9});
  // A metre from the other air the wall is plain: by the sum of resistances.
  const double resistance = 0.25 + 0.3 / 0.8 + 0.04;
  CHECK(year.spots[0].temperature[0] == WithinAbs{20 - 20 * 0.25 / resistance, 0.2});
  CHECK(year.spots[1].temperature[0] == WithinAbs{20.0, 0.2});
  // Where it is coldest before outdoors as stated, too, there is one cold spot.
  CHECK(year_of(19).spots.size() == 1);
}

}  // namespace
