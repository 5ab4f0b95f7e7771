// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "tests/support/within.hpp"
#include "tests/tools/by_hand.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/advice.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/outcome_words.hpp"

namespace quoin::tools {
namespace {

using testing::WithinAbs;
using Kind = Outcome::Kind;

/// A room of 20 degC beside an outside of -5 degC whose coldest spot has this temperature. At 50 %
/// the dew point is 9.269 degC, and 80 % are reached at 12.625 degC.
SolvedVariant room_at(double spot, double band, std::optional<double> humidity,
                      std::vector<cases::Criterion> criteria) {
  SolvedVariant solved;
  solved.variant = testing::corner_variant("as found", 0.0, false);
  const SpaceId hall(0u), yard(1u);
  solved.variant.spaces[hall].temperature = 20.0;
  solved.variant.spaces[hall].humidity = humidity;
  solved.variant.spaces[yard].temperature = -5.0;
  solved.variant.criteria = std::move(criteria);
  solver::AirSurface surface;
  surface.air = hall;
  surface.coldest.region = geometry::RegionId(1u);
  surface.coldest.temperature = {spot, band, true};
  surface.coldest.factor = {(spot + 5.0) / 25.0, band / 25.0, true};
  solved.surface.airs = {surface};
  solved.humidity = humidities(solved);
  solved.verdicts = verdicts(solved);
  solved.outcomes = outcomes(solved);
  put_into_words(solved);
  return solved;
}

Outcome outcome_at(double spot, double band, std::optional<double> humidity,
                   std::vector<cases::Criterion> criteria = {}) {
  return room_at(spot, band, humidity, std::move(criteria)).outcomes.at(0);
}

cases::Criterion humidity_limit(std::string name, double limit) {
  return {std::move(name), cases::SurfaceHumidityLimit{limit}};
}

cases::Criterion threshold(double factor) { return {"factor", cases::FactorThreshold{factor, {}}}; }

}  // namespace

TEST_CASE("below the dew point by more than the band is wet and within it is at the dew point") {
  CHECK(outcome_at(9.0, 0.1, 0.5).kind == Kind::wet);
  CHECK(outcome_at(9.26, 0.025, 0.5).kind == Kind::at_the_dew_point);
  CHECK(outcome_at(9.28, 0.025, 0.5).kind == Kind::at_the_dew_point);
  CHECK(outcome_at(9.4, 0.025, 0.5).kind == Kind::mould);  // the twin
  CHECK(outcome_at(9.0, 0.1, 0.5).decided_by == "dew point");
  CHECK(outcome_at(9.0, 0.1, 0.5).unit == "K");
  CHECK(outcome_at(9.0, 0.1, 0.5).margin == WithinAbs{9.0 - 9.2690, 1e-4});
}

TEST_CASE("over 80 percent is mould whatever the criteria") {
  const double spot = 11.0;  // 89 %
  for (const auto& criteria :
       std::vector<std::vector<cases::Criterion>>{{},
                                                  {threshold(0.5)},
                                                  {humidity_limit("condensation", 1.0)},
                                                  {humidity_limit("lax", 0.95), threshold(0.5)}}) {
    const Outcome outcome = outcome_at(spot, 0.01, 0.5, criteria);
    CHECK(outcome.kind == Kind::mould);
    CHECK(outcome.decided_by == "80 %");
    CHECK(*outcome.limit == WithinAbs{0.8, 1e-12});
    CHECK(tone_of(outcome.kind) == Tone::bad);
  }
  CHECK(outcome_at(17.0, 0.01, 0.5, {threshold(0.5)}).kind == Kind::safe);  // the twin
}

TEST_CASE("a stricter limit that is not there for mould fails by its name") {
  const Outcome corrosion = outcome_at(14.0, 0.01, 0.5, {humidity_limit("corrosion", 0.6)});
  CHECK(corrosion.kind == Kind::fails);
  CHECK(corrosion.decided_by == "corrosion");
  CHECK(badge(corrosion) == "fails corrosion");
  CHECK(corrosion.words.find("above 60 %") != std::string::npos);
  CHECK(outcome_at(14.0, 0.01, 0.5, {humidity_limit("mould, strict", 0.7)}).kind == Kind::mould);
}

TEST_CASE("every limit that fails is named wherever the outcome is told") {
  const SolvedVariant solved =
      room_at(14.0, 0.01, 0.5, {threshold(0.8), humidity_limit("corrosion", 0.6)});
  const Outcome& outcome = solved.outcomes.at(0);
  CHECK(outcome.kind == Kind::fails);
  REQUIRE(outcome.broken.size() == 2);
  CHECK(deciders(outcome) == "factor, corrosion");
  CHECK(badge(outcome) == "fails fRsi 0.8, corrosion");
  for (const char* name : {"'factor'", "'corrosion'"})
    CHECK(outcome.words.find(name) != std::string::npos);
  Results results;
  results.variants = {solved};
  const std::string sentence = advice_on(results).sentence;
  CHECK(sentence.find("does not meet 'factor' (fRsi 0.76, where 0.80 is asked for) nor "
                      "'corrosion' (73 % humidity there, where 60 % is the most)") !=
        std::string::npos);

  // Of what is wet or mouldy only what its wetness does not tell is named besides.
  const SolvedVariant wet = room_at(9.0, 0.01, 0.5, {humidity_limit("mould", 0.8), threshold(0.8)});
  CHECK(deciders(wet.outcomes.at(0)) == "dew point");
  CHECK(wet.outcomes.at(0).broken.size() == 2);
  REQUIRE(also_broken(wet.outcomes.at(0)).size() == 1);
  results.variants = {wet};
  CHECK(advice_on(results).sentence.find("It does not meet 'factor' (") != std::string::npos);

  // The twin: one limit fails, one is named.
  const Outcome one =
      outcome_at(14.0, 0.01, 0.5, {threshold(0.5), humidity_limit("corrosion", 0.6)});
  CHECK(deciders(one) == "corrosion");
  CHECK(one.words.find("factor") == std::string::npos);
}

TEST_CASE("over 80 percent is mould even where a stricter limit is there for something else") {
  const Outcome outcome = outcome_at(11.0, 0.01, 0.5, {humidity_limit("corrosion", 0.6)});
  CHECK(outcome.kind == Kind::mould);
  CHECK(outcome.decided_by == "80 %");
  REQUIRE(also_broken(outcome).size() == 1);
  CHECK(outcome.words.find("'corrosion'") != std::string::npos);
}

TEST_CASE("a limit of humidity is for mould unless its name or its height says otherwise") {
  CHECK(is_for_mould(humidity_limit("strict", 0.7)));
  CHECK(is_for_mould(humidity_limit("Mould on paper", 0.6)));
  CHECK(is_for_mould({"critical", cases::CriticalHumidity{}}));
  CHECK(is_for_mould(humidity_limit("environment", 0.75)));  // the twin of "iron"
  CHECK_FALSE(is_for_mould(humidity_limit("strict", 0.6)));
  CHECK_FALSE(is_for_mould(humidity_limit("Corrosion of ties", 0.75)));
  CHECK_FALSE(is_for_mould(threshold(0.7)));
  CHECK(outcome_at(13.5, 0.01, 0.5, {humidity_limit("strict", 0.7)}).kind == Kind::mould);
}

TEST_CASE("a threshold that is not reached is named, and nothing is safe beside it") {
  const SolvedVariant solved = room_at(14.0, 0.01, 0.3, {threshold(0.8)});
  const Outcome& outcome = solved.outcomes.at(0);
  CHECK(outcome.kind == Kind::fails);
  CHECK(outcome.decided_by == "factor");
  CHECK(badge(outcome) == "fails fRsi 0.8");
  CHECK(outcome.words.find("safe") == std::string::npos);
}

TEST_CASE("what holds is marginal above a chance of a tenth and safe at or below it") {
  SolvedVariant close = room_at(13.0, 0.01, 0.5, {humidity_limit("mould", 0.8)});
  Chance chance;
  chance.space = SpaceId(0u);
  chance.unit = "%RH";
  chance.broken = 0.3;
  close.chances = {chance};
  close.outcomes = outcomes(close);
  CHECK(close.outcomes.at(0).kind == Kind::marginal);
  REQUIRE(close.outcomes.at(0).chance);
  CHECK(*close.outcomes.at(0).chance > marginal_chance);
  const solver::AirSurface surface = close.surface.airs.front();
  CHECK(outcome_in(close, surface, 0.10).kind == Kind::safe);
  CHECK(outcome_in(close, surface, 0.101).kind == Kind::marginal);
  close.chances.front().broken = 0.02;
  close.outcomes = outcomes(close);
  CHECK(close.outcomes.at(0).kind == Kind::safe);
  CHECK(*close.outcomes.at(0).chance <= marginal_chance);
}

TEST_CASE("without a humidity only a threshold judges, and what is missing is said") {
  CHECK(outcome_at(14.0, 0.01, std::nullopt).kind == Kind::not_judged);
  CHECK(outcome_at(14.0, 0.01, std::nullopt).words.find("humidity of hall is not given") !=
        std::string::npos);
  CHECK(outcome_at(14.0, 0.01, std::nullopt, {threshold(0.7)}).kind == Kind::safe);
  CHECK(outcome_at(14.0, 0.01, std::nullopt, {threshold(0.8)}).kind == Kind::fails);
  CHECK(outcome_at(14.0, 0.01, std::nullopt, {threshold(0.7), humidity_limit("mould", 0.8)}).kind ==
        Kind::not_judged);
}

TEST_CASE("figures are rounded no further than they stay in their order") {
  CHECK(decimals_for({11.09, 11.12}, 1) == 2);
  CHECK(decimals_for({11.0, 12.0}, 1) == 1);
  CHECK(decimals_for({11.0, 11.0}, 1) == 1);  // what is equal may look it
  CHECK(fixed(-0.001, 1) == "0.0");
  CHECK(fixed(-0.1, 1) == "-0.1");
  CHECK(fixed_band(0.0, 3) == "0.001");
  CHECK(fixed_band(0.002, 3) == "0.002");
  CHECK(chance_words(0.4) == "in 40 of 100 cases");
  CHECK(chance_words(0.1001) == "in more than 10 of 100 cases");
}

}  // namespace quoin::tools
