// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <sstream>
#include <string>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/find/year.hpp"
#include "tools/answer/run.hpp"
#include "tools/answer/words/year_words.hpp"
#include "tools/output/json/year.hpp"
#include "tools/output/text/report.hpp"

using namespace quoin;
using testing::WithinAbs;

namespace {

tools::Results results_of(const std::string& text) {
  return tools::results_of(cases::case_of(text, "case.yaml"), "case.yaml", {}, {});
}

tools::SolvedVariant solved(const std::string& text) { return results_of(text).variants.front(); }

/// An invented house: a wall between these spaces, with a year.
std::string house(const std::string& room, const std::string& yard, const std::string& rest) {
  return "quoin: 1\nspaces:\n  room: {is: inside, " + room + "}\n  yard: {is: outside, " + yard +
         "}\nsection: {wall: {layers: [[lime plaster, 15], [common brick, 225]]}}\n" + rest;
}

const std::string year =
    "climate:\n"
    "  outside temperature: [4, 4, 6, 8, 11, 14, 17, 16, 14, 10, 6, 4]\n"
    "  outside humidity: [88, 86, 82, 78, 76, 77, 78, 79, 82, 85, 87, 88]\n";

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

bool warned(const tools::SolvedVariant& solved, const std::string& words) {
  return std::any_of(solved.warnings.begin(), solved.warnings.end(),
                     [&](const std::string& warning) { return has(warning, words); });
}

TEST_CASE("a threshold of fRsi alone is set beside what the months need against mould") {
  const std::string text = house("temperature: 20, humidity: 50", "temperature: 0, humidity: 90",
                                 "criteria: {din: {published: DIN 4108-2}}\n" + year);
  const tools::Results results = results_of(text);
  const tools::SolvedVariant& one = results.variants.front();
  REQUIRE(one.years.size() == 1);
  REQUIRE(one.years[0].criteria.size() == 1);
  CHECK(one.years[0].criteria[0].criterion == "mould at 80 %");
  // By hand: 1168.5 / 0.8 = 1460.6 Pa is saturated at 12.62 degC; (12.62 - 4) / 16 = 0.539.
  CHECK(one.years[0].criteria[0].factor_needed == WithinAbs{0.539, 0.002});
  const std::string words = tools::words_for(one, one.years[0]);
  CHECK(has(words, "din: fRsi 0.70 all year, no less than the 0.54 that January needs"));
  CHECK(has(tools::text_report(results, {}), "Over the year"));
  CHECK(has(tools::text_report(results, {.width = 2000}), "mould at 80 %"));
  CHECK(tools::years_json(one)["room"]["months"][0]["needs"].size() == 1);
  // A wetter room needs more than the threshold; where a humidity is judged, nothing is added.
  const tools::SolvedVariant wetter = solved(
      house("temperature: 20, humidity: 60", "temperature: 0, humidity: 90",
            "criteria: {din: {published: DIN 4108-2}, wets: {surface humidity: 100}}\n" + year));
  REQUIRE(wetter.years[0].criteria.size() == 1);
  CHECK(wetter.years[0].criteria[0].criterion == "wets");
  const tools::SolvedVariant wet =
      solved(house("temperature: 20, humidity: 60", "temperature: 0, humidity: 90",
                   "criteria: {din: {published: DIN 4108-2}}\n" + year));
  CHECK(has(tools::words_for(wet, wet.years[0]), "din: fRsi 0.70 all year, less than the 0.7"));
}

TEST_CASE("the humidity inside by month is enough for a year, with a criterion or without") {
  const std::string by_month =
      year + "  inside humidity: [50, 50, 50, 50, 50, 60, 60, 60, 60, 50, 50, 50]\n";
  for (const char* criteria : {"", "criteria: {mould: {surface humidity: 80}}\n"}) {
    const tools::SolvedVariant one =
        solved(house("temperature: 20", "temperature: 0", criteria + by_month));
    REQUIRE(one.years.size() == 1);
    CHECK(one.years[0].criteria[0].criterion == "mould");
    CHECK(one.years[0].months[5].inside_humidity == WithinAbs{0.6, 1e-12});
    CHECK(one.verdicts.empty());  // nothing is known of the air as stated
    CHECK(warned(one, "over the year only"));
    CHECK_FALSE(warned(one, "nothing is said of the year"));
  }
  // Without it there is no year, and it is said so.
  const tools::SolvedVariant dry = solved(house("temperature: 20", "temperature: 0", year));
  CHECK(dry.years.empty());
  CHECK(warned(dry, "nothing is said of the year"));
}

TEST_CASE("the temperature inside by month is that of every room") {
  const auto beside = [](const std::string& next, const std::string& more) {
    return solved(
        "quoin: 1\nspaces:\n  room: {is: inside, temperature: 20, humidity: 55}\n"
        "  out: {is: outside, temperature: 4, humidity: 88}\n"
        "  next: {is: inside, temperature: " +
        next +
        ", humidity: 60}\n"
        "section:\n  partition:\n    layers: [[common brick, 225]]\n"
        "    lining: [[lime plaster, 15]]\n"
        "    partition: [[lime plaster, 15], [common brick, 102], [lime plaster, 15]]\n"
        "    inside: room\n    outside: out\n    beyond: next\n" +
        more);
  };
  const std::string list = "  inside temperature: [20,20,20,20,20,20,20,20,20,20,20,20]\n";
  // The spot that is the coldest as stated; with warm rooms another is colder.
  const auto january = [](const tools::SolvedVariant& one) {
    const auto& spots = one.years[0].spots;
    return *std::find_if(spots.begin(), spots.end(), [&](const tools::SpotYear& spot) {
      return spot.spot.place == one.surface.airs.front().coldest.place;
    });
  };
  const tools::SpotYear all_warm = january(beside("16", year + list));
  const tools::SpotYear as_stated = january(beside("16", year));
  // Stated at once, with a probe where the spot is. January has the outside as stated.
  const auto probed = [&](const std::string& next, geometry::Point at) {
    const std::string probe = "probes: {spot: [" + std::to_string(1e3 * at.x) + ", " +
                              std::to_string(1e3 * at.y) + "]}\n";
    return beside(next, probe).surface.probes[0].temperature.value;
  };
  REQUIRE(all_warm.temperature[0] < 20.0);
  // Bands of either grid are below 0.04 K.
  CHECK(all_warm.temperature[0] == WithinAbs{probed("20", all_warm.spot.place), 0.05});
  CHECK(as_stated.temperature[0] == WithinAbs{probed("16", as_stated.spot.place), 0.05});
  CHECK_FALSE(all_warm.temperature[0] == WithinAbs{probed("16", all_warm.spot.place), 0.1});
}

TEST_CASE("evaporation goes on in the months of a year, and it is said so") {
  const auto with = [](const std::string& more) {
    return solved(
        house("temperature: 20, humidity: 50", "temperature: 4, humidity: 88" + more, year));
  };
  const tools::SolvedVariant wet = with(", evaporation: {rate: 100}");
  const double as_stated = wet.surface.airs.front().coldest.temperature.value;
  CHECK(wet.years[0].spots[0].temperature[0] == WithinAbs{as_stated, 1e-6});  // January: 4 degC too
  CHECK(warned(wet, "in every month of the climate"));
  const tools::SolvedVariant soaked = with(", wet surface: {coat sd: 0.05 m}");
  CHECK(soaked.years[0].spots[0].temperature[0] ==
        WithinAbs{soaked.surface.airs.front().coldest.temperature.value, 1e-6});
  CHECK(warned(soaked, "in the weather as stated"));
  // Neither cooling nor remark without; a clear night is no mean of a month.
  const tools::SolvedVariant dry = with("");
  CHECK(dry.years[0].spots[0].temperature[0] > as_stated + 1.0);
  CHECK_FALSE(warned(dry, "month of the climate"));
  const tools::SolvedVariant starry = with(", clear sky: {colder by: 11}");
  CHECK(starry.years[0].spots[0].temperature[0] ==
        WithinAbs{dry.years[0].spots[0].temperature[0], 1e-3});
  CHECK(starry.surface.airs.front().coldest.temperature.value <
        dry.surface.airs.front().coldest.temperature.value - 0.1);
  CHECK(warned(starry, "no mean of a month"));
  const tools::SolvedVariant both = with(", clear sky: {colder by: 11}, evaporation: {rate: 100}");
  CHECK(both.years[0].spots[0].temperature[0] ==
        WithinAbs{wet.years[0].spots[0].temperature[0], 1e-3});
}

TEST_CASE("air too humid for any fabric is called so, with what helps") {
  const auto words = [](const std::string& more) {
    const tools::SolvedVariant one =
        solved(house("temperature: 18, moisture production: {rate: 700 g/h, volume: 180, " + more +
                         "air change: 0.5}",
                     "temperature: 0, humidity: 85", year));
    return tools::words_for(one, one.years[0]);
  };
  const std::string shut = words("");
  CHECK(has(shut, "All year it needs more than fRsi 1, which no fabric has"));
  CHECK(has(shut, "state `summer air change`"));
  CHECK(has(shut, "In June to October the household gives off more than the air can hold"));
  CHECK_FALSE(has(words("summer air change: 3, "), "state `summer air change`"));
  const tools::SolvedVariant class3 =
      solved(house("temperature: 20, humidity class: 3", "temperature: 0, humidity: 85", year));
  const std::string ordinary = tools::words_for(class3, class3.years[0]);
  CHECK_FALSE(has(ordinary, "no fabric"));
  CHECK_FALSE(has(ordinary, "can hold"));
}

TEST_CASE("the month that needs most of fabric is named beside those beyond it") {
  const tools::SolvedVariant one =
      solved(house("temperature: 18, moisture production: {rate: 300 g/h, volume: 180, "
                   "air change: 0.5}",
                   "temperature: 0, humidity: 85", year));
  const std::string words = tools::words_for(one, one.years[0]);
  CHECK(has(words, "it needs more than fRsi 1"));
  CHECK_FALSE(has(words, "All year it needs"));
  CHECK(has(words, "Of the other months "));
}

TEST_CASE("the table of the year prints the saturation pressure that a surface needs") {
  const tools::Results results =
      results_of(house("temperature: 20, humidity class: 3", "temperature: 0, humidity: 90", year));
  const tools::Year& one = results.variants.front().years[0];
  // ISO 13788 (memory): the pressure inside by 0.8; by hand 1363.3 / 0.8 = 1704.1 Pa in January.
  CHECK(tools::saturation_pressure_needed(one.criteria[0], 0) == WithinAbs{1704.1, 0.7});
  CHECK(tools::saturation_pressure_needed(one.criteria[0], 6) ==
        WithinAbs{one.months[6].inside_pressure / 0.8, 1e-6});
  CHECK_FALSE(tools::saturation_pressure_needed(one.criteria[0], 6) == WithinAbs{1704.1, 50.0});
  const std::string text = tools::text_report(results, {.width = 2000});
  CHECK(has(text, "1704"));
  CHECK(has(text, "mould: saturation pressure needed Pa"));
  CHECK(
      tools::years_json(
          results.variants.front())["room"]["months"][0]["needs"]["mould"]["saturation_pressure_Pa"]
          .get<double>() == WithinAbs{1704.1, 0.7});
}

TEST_CASE("the tables of a year fit 80 columns whatever the criteria, none left out") {
  const std::string criteria =
      "criteria: {mould in the parlour: {surface humidity: 80}, condensation there: {surface "
      "humidity: 100}, growth by the curve: {critical humidity: by temperature}}\n";
  const tools::Results results = results_of(
      house("temperature: 20, humidity class: 3", "temperature: 0, humidity: 90", criteria + year));
  const std::string text = tools::text_report(results, {});
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) {
    CAPTURE(line);
    CHECK(tools::columns_of(line) <= 80);
  }
  for (const char* name : {"mould in", "condensation", "growth by"}) CHECK(has(text, name));
}

}  // namespace
