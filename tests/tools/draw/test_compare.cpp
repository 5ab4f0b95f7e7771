// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "tests/tools/by_hand.hpp"
#include "tests/tools/golden.hpp"
#include "tests/tools/xml.hpp"
#include "tools/draw/field/compare.hpp"

using namespace quoin;
using namespace quoin::tools;
using quoin::testing::count;

namespace {

constexpr const char* bad_sign = "fill=\"#8f1d2c\"";
constexpr const char* good_sign = "fill=\"#1f5c33\"";

TEST_CASE("the picture of variants side by side is the golden one") {
  CHECK(testing::is_golden(drawn_compare(testing::results_by_hand()).svg(), "compare.svg"));
}

TEST_CASE("variants side by side show name, verdict, coldest spot and factor of each") {
  const std::string picture = drawn_compare(testing::results_by_hand()).svg();
  for (const char* shown : {">as found<", ">dried out<"}) {
    CAPTURE(shown);
    CHECK(count(picture, shown) == 1);
  }
  for (const char* shown :
       {">wet<", ">coldest 9.1 °C, the angle of the corner<", ">fRsi 0.48, this air needs 0.76<"}) {
    CAPTURE(shown);
    CHECK(count(picture, shown) == 2);
  }
  CHECK(count(picture, bad_sign) == 2);
  CHECK(count(picture, good_sign) == 0);
}

TEST_CASE("a variant that holds every criterion is shown as safe, one that is gated as not") {
  Results results = testing::results_by_hand();
  SolvedVariant& second = results.variants[1];
  second.humidity[0].surface_humidity = 0.7;
  second.outcomes.at(0).kind = Outcome::Kind::safe;
  std::string picture = drawn_compare(results).svg();
  CHECK(count(picture, ">safe<") == 1);
  CHECK(count(picture, good_sign) == 1);
  CHECK(count(picture, bad_sign) == 1);
  second.outcomes.at(0).kind = Outcome::Kind::dry_first;
  picture = drawn_compare(results).svg();
  CHECK(count(picture, ">dry first<") == 1);
  CHECK(count(picture, good_sign) == 0);
}

TEST_CASE("variants in different climates share one scale of temperatures") {
  Results results = testing::results_by_hand();
  results.variants[1].variant.spaces[SpaceId(1u)].temperature = -9.0;
  const std::string picture = drawn_compare(results).svg();
  CHECK(picture.find(">-5<") != std::string::npos);
  CHECK(picture.find(">15<") != std::string::npos);
}

TEST_CASE("of several rooms the one judged worst is shown, by name") {
  Results results = testing::results_by_hand();
  for (SolvedVariant& solved : results.variants) {
    const SpaceId attic = solved.variant.spaces.add(
        testing::space("attic", cases::SpaceKind::inside, 18.0, 0.4, SpaceId(2u)));
    solved.surface.airs.push_back(solved.surface.airs[0]);
    solved.surface.airs.back().air = attic;
    solved.surface.airs.back().coldest.temperature.value = 4.0;  // colder, but of drier air
    solved.outcomes.push_back(solved.outcomes.at(0));
    solved.outcomes.back().space = attic;
    solved.outcomes.back().kind = Outcome::Kind::safe;
  }
  const std::string picture = drawn_compare(results).svg();
  CHECK(count(picture, ">hall: coldest 9.1 °C, the angle of the corner<") == 2);
  CHECK(picture.find(">attic") == std::string::npos);
}

TEST_CASE("one variant alone is compared with nothing") {
  Results results = testing::results_by_hand();
  results.variants.pop_back();
  CHECK(drawn_compare(results).is_empty());
}

TEST_CASE("names that are markup, emoji or very long do no harm side by side") {
  for (const std::string& name : testing::hostile_names()) {
    CAPTURE(name.substr(0, 40));
    const std::string picture = drawn_compare(testing::results_named(name)).svg();
    CHECK(testing::is_well_formed(picture));
    CHECK(picture.find("<script") == std::string::npos);
    CHECK(picture.find('\x1b') == std::string::npos);
    CHECK(picture.size() < 400000);
  }
}

}  // namespace
