// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tests/tools/answer/survey/surveyed_corner.hpp"
#include "tools/answer/run.hpp"
#include "tools/answer/survey/explain.hpp"
#include "tools/answer/survey/household_doubt.hpp"
#include "tools/answer/survey/survey_words.hpp"

namespace quoin::tools {
namespace {

using testing::all_words;
using testing::cold;
using testing::corner;
using testing::findings_of;
using testing::WithinAbs;

}  // namespace

TEST_CASE("two readings that pull apart leave draws enough to tell ranges from") {
  const std::string two =
      "  b0: {temperature: 7.0, with: probe}\n"
      "  a1: {temperature: 13.6, with: probe}\n";
  const cases::Case source = cases::case_of(corner(two), "case.yaml");
  const WorkedSurvey worked =
      worked_survey({{"", &source.variants.front()}}, *source.survey, solver::LinearOptions{});
  const InferredExplanation& best = worked.inferred.front();
  CHECK(best.effective > 400.0);
  CHECK(!worked.findings.explanations.front().unknowns.empty());
  // Twin: from about the mode, which is the narrow end of a funnel, too few.
  const Inferred& one = best.each.front();
  const solver::StandardDraws standard(4096, worked.model.unknowns.size() + 1, 5.0);
  const solver::Sample once =
      solver::sample_of(inference_of(worked.model, one.readings), one.mode, standard);
  CHECK(once.effective < 200.0);
}

TEST_CASE(
    "of readings that nothing explains nothing is concluded and no chance is told from them") {
  const auto readings = [](double b1, double b2) {
    std::string text = cold;
    const auto put = [&](const std::string& probe, double value) {
      const std::string key = probe + ": {temperature: ";
      const std::size_t at = text.find(key) + key.size();
      text.replace(at, text.find(',', at) - at, std::to_string(value));
    };
    put("b1", b1);
    put("b2", b2);
    return text;
  };
  const auto told = [](const std::string& text) {
    const cases::Case source =
        cases::case_of(corner(text) + "criteria: {mould: {surface humidity: 80}}\n", "case.yaml");
    return results_of(source, "case.yaml", {});
  };
  const Results apart = told(readings(15.6, 4.6)), agree = told(cold);
  REQUIRE(apart.survey);
  CHECK_FALSE(concludes(*apart.survey));
  CHECK(apart.survey->words.front().find("Nothing is concluded.") != std::string::npos);
  CHECK(all_words(*apart.survey).find("again before anything else is measured") !=
        std::string::npos);
  REQUIRE(apart.variants.front().chances.size() == 1);
  CHECK_FALSE(apart.variants.front().chances.front().from_readings);
  CHECK(concludes(*agree.survey));
  CHECK(agree.variants.front().chances.front().from_readings);
}

TEST_CASE("where water may evaporate a zone conducts better or water evaporates") {
  const std::string either = "masonry conducts better, or water evaporates";
  CHECK(all_words(findings_of(corner(cold, "  rain on the wall: 5 h\n"))).find(either) !=
        std::string::npos);
  CHECK(all_words(findings_of(corner(cold, "  surface: wet\n"))).find(either) != std::string::npos);
  CHECK(all_words(findings_of(corner(cold))).find(either) == std::string::npos);
}

TEST_CASE("readings written in degrees Fahrenheit are recognised and others beyond the airs not") {
  const auto words = [](double times, double more) {
    std::string text = cold;
    for (std::size_t at = 0; (at = text.find("temperature: ", at)) != std::string::npos;) {
      at += std::string("temperature: ").size();
      const std::size_t end = text.find(',', at);
      text.replace(at, end - at, std::to_string(times * std::stod(text.substr(at)) + more));
    }
    const SurveyFindings found = findings_of(corner(text));
    CHECK(found.quality.fit == Fit::refused);
    return all_words(found);
  };
  const std::string remedy = "As degrees Fahrenheit they would lie between the airs";
  const std::string fahrenheit = words(1.8, 32.0);
  CHECK(fahrenheit.find(remedy) != std::string::npos);
  CHECK(words(1.0, 60.0).find(remedy) == std::string::npos);
  // In the order of the file.
  CHECK(fahrenheit.find("b0 (") < fahrenheit.find("b1 ("));
  CHECK(fahrenheit.find("b3 (") < fahrenheit.find("o1 ("));
}

TEST_CASE("an air outside that is warmer than the room is told as such") {
  std::string text = corner(cold, "", 26.0);
  const std::string day = "{lowest: 0, highest: 4}";
  text.replace(text.find(day), day.size(), "{lowest: 24, highest: 28}");
  CHECK(all_words(findings_of(text)).find("warmer outside than inside") != std::string::npos);
}

TEST_CASE("no chance is told as never or always") {
  for (const std::string humidity : {"5", "99"}) {
    const cases::Case source = cases::case_of(
        "quoin: 1\n"
        "spaces:\n"
        "  room: {is: inside, temperature: 18.5, humidity: " +
            humidity +
            "}\n"
            "  outdoors: {is: outside, temperature: 2}\n"
            "section: {wall: {layers: [{material: common brick, thickness: 225}]}}\n"
            "criteria: {mould: {surface humidity: 80}}\n",
        "case.yaml");
    const SolvedVariant one = solved(source.variants.front(), {}, {});
    REQUIRE(one.chances.size() == 1);
    for (const double told :
         {one.chances[0].broken, one.chances[0].fabric, one.chances[0].household}) {
      CHECK(told > 0.0);
      CHECK(told < 1.0);
    }
  }
}

TEST_CASE("where the household carries the doubt its humidity is logged next and not the wall") {
  const auto next = [](double of_household, double broken, double agreement = 0.5) {
    SolvedVariant solved;
    cases::Space room;
    room.name = "room";
    Chance chance;
    chance.criterion = "mould";
    chance.space = solved.variant.spaces.add(room);
    chance.unit = "%RH";
    chance.broken = broken;
    chance.shares = {{"what they breathe", of_household, InputOf::humidity},
                     {"temperature of masonry", 1.0 - of_household}};
    chance.tornado = {{"what they breathe", 8.0, -8.0, InputOf::humidity}};
    solved.chances = {chance};
    SurveyFindings findings;
    findings.words = {"first", "last"};
    findings.explanations.resize(1);
    findings.explanations.front().effective = 1000.0;
    findings.explanations.front().agreement = agreement;
    tell_household_doubt({&solved}, cases::Household{}, findings);
    CHECK(findings.words.back() == "last");
    CHECK(findings.words.size() == 2 + findings.next.size());
    return findings.next;
  };
  const std::vector<NextStep> log = next(0.9, 0.4);
  REQUIRE(log.size() == 1);
  CHECK(log.front().words.find("log the room's humidity, not the wall") != std::string::npos);
  CHECK(log.front().width_from == WithinAbs{16.0, 1e-12});
  CHECK(log.front().width_to == WithinAbs{16.0 * 0.03 / 0.10, 1e-12});
  CHECK(next(0.5, 0.4).empty());        // the wall carries as much
  CHECK(next(0.9, 0.95).empty());       // nothing is open
  CHECK(next(0.9, 0.4, 0.01).empty());  // nothing is concluded from the readings
}

}  // namespace quoin::tools
