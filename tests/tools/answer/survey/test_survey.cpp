// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tests/tools/answer/survey/surveyed_corner.hpp"
#include "tools/answer/run.hpp"
#include "tools/answer/survey/chances.hpp"
#include "tools/answer/survey/explain.hpp"
#include "tools/answer/survey/survey_words.hpp"

namespace quoin::tools {
namespace {

using testing::all_words;
using testing::cold;
using testing::corner;
using testing::findings_of;
using testing::WithinAbs;
using testing::WithinRel;

const Explained& explained(const SurveyFindings& findings, cases::ExplanationKind kind) {
  const auto found = std::find_if(findings.explanations.begin(), findings.explanations.end(),
                                  [&](const Explained& one) { return one.what.kind == kind; });
  REQUIRE(found != findings.explanations.end());
  return *found;
}

const Learned& unknown(const Explained& explained, const std::string& key) {
  const auto found = std::find_if(explained.unknowns.begin(), explained.unknowns.end(),
                                  [&](const Learned& one) { return one.key == key; });
  REQUIRE(found != explained.unknowns.end());
  return *found;
}

/// What temperatures cannot tell, and so is never said. That the readings need no explanation "does
/// not show that the wall is dry" is the one sentence that may hold such words.
const std::vector<std::string> forbidden{"proved", "is wet",           "is damp",    "is dry",
                                         "leak",   "moisture content", "probability"};

}  // namespace

TEST_CASE("a corner colder than its reference conducts better and nothing is said of water") {
  const SurveyFindings found = findings_of(corner(cold));
  CHECK(found.quality.fit == Fit::good);
  REQUIRE(!found.explanations.empty());
  CHECK(found.explanations.front().what.kind == cases::ExplanationKind::conducts_better);
  const Learned& ratio = unknown(found.explanations.front(), "ratio");
  CHECK(ratio.low > 1.0);
  CHECK(ratio.learned > 0.1);
  CHECK(found.basis_error <= 0.02);
  const std::string words = all_words(found);
  for (const std::string& never : forbidden) CHECK(words.find(never) == std::string::npos);
  CHECK(words.find("within no standard") != std::string::npos);
}

TEST_CASE("a zone that conducts better asks for a sample before anything is built") {
  const SurveyFindings found = findings_of(corner(cold));
  CHECK(first_step(found).find("have a sample of masonry drilled") != std::string::npos);
  CHECK(bears_on_chance(found));
  // Twins: readings as drawn ask for nothing, and those that nothing explains bear on nothing.
  const SurveyFindings drawn = findings_of(
      corner("  b0: {temperature: 11.0, with: probe}\n  b1: {temperature: 11.6, with: probe}\n"
             "  b3: {temperature: 12.8, with: probe}\n  a1: {temperature: 13.2, with: probe}\n"
             "  a2: {temperature: 13.0, with: probe}\n"));
  CHECK(first_step(drawn).empty());
  CHECK(bears_on_chance(drawn));
  std::string wild = cold;
  wild.replace(wild.find("7.0"), 3, "18.4");
  const SurveyFindings none = findings_of(corner(wild));
  CHECK(first_step(none).empty());
  CHECK_FALSE(bears_on_chance(none));
}

TEST_CASE("readings in another order tell the same") {
  std::vector<std::string> lines;
  for (std::size_t at = 0; at < cold.size();) {
    const std::size_t end = cold.find('\n', at) + 1;
    lines.push_back(cold.substr(at, end - at));
    at = end;
  }
  std::reverse(lines.begin(), lines.end());
  std::string reversed;
  for (const std::string& line : lines) reversed += line;
  const SurveyFindings one = findings_of(corner(cold)), other = findings_of(corner(reversed));
  REQUIRE(one.explanations.size() == other.explanations.size());
  // The order of a file decides nothing, so that not even rounding differs.
  for (std::size_t e = 0; e < one.explanations.size(); ++e) {
    CHECK(one.explanations[e].what.kind == other.explanations[e].what.kind);
    CHECK(one.explanations[e].log_odds == other.explanations[e].log_odds);
    REQUIRE(one.explanations[e].unknowns.size() == other.explanations[e].unknowns.size());
    for (std::size_t u = 0; u < one.explanations[e].unknowns.size(); ++u)
      CHECK(one.explanations[e].unknowns[u].median == other.explanations[e].unknowns[u].median);
  }
  // Readings are told in the order in which they were written.
  CHECK(one.explanations[0].readings.front().probe == "b0");
  CHECK(other.explanations[0].readings.front().probe == "o1");
}

TEST_CASE("a reading that may be off by far tells as much as none") {
  const std::string sharp = "b1: {temperature: 8.6, with: probe}";
  std::string vague = cold, without = cold;
  vague.replace(vague.find(sharp), sharp.size(),
                "b1: {temperature: 8.6, with: probe, plus or minus: 10}");
  without.erase(without.find("  b1:"), without.find("  b2:") - without.find("  b1:"));
  const auto ratio = [](const std::string& readings) {
    const SurveyFindings found = findings_of(corner(readings));
    return unknown(explained(found, cases::ExplanationKind::conducts_better), "ratio").median;
  };
  CHECK(ratio(vague) == WithinRel{ratio(without), 0.02});  // ten kelvins are far, not infinite
}

TEST_CASE("a day without a difference between the airs is refused and nothing is told") {
  std::string text = corner(cold, "", 16.0);
  const std::string day = "{lowest: 0, highest: 4}";
  text.replace(text.find(day), day.size(), "{lowest: 15, highest: 17}");
  const SurveyFindings refused = findings_of(text);
  CHECK(refused.quality.fit == Fit::refused);
  CHECK(refused.explanations.empty());
  CHECK(refused.words.front() == "These readings cannot tell what is wrong:");
}

TEST_CASE("without a reference no zone is compared and nothing is named") {
  std::string alone = cold;
  alone.erase(alone.find("  a1:"), alone.find("  o1:") - alone.find("  a1:"));
  const SurveyFindings found = findings_of(corner(alone));
  CHECK(found.quality.fit == Fit::weak);
  CHECK_FALSE(found.named);
  for (const Explained& one : found.explanations) {
    CHECK(one.what.kind != cases::ExplanationKind::conducts_better);
    for (const Learned& learned : one.unknowns) CHECK(learned.key != "ratio");
  }
}

TEST_CASE("a pair of pads is proposed though none was read and only with a reference to pad") {
  const auto proposed = [](const std::string& readings) {
    const SurveyFindings found = findings_of(corner(readings));
    return std::any_of(found.next.begin(), found.next.end(), [](const NextStep& step) {
      return step.what == "pads on zone and reference" && step.width_to < step.width_from;
    });
  };
  CHECK(proposed(cold));
  CHECK_FALSE(proposed(cold.substr(0, cold.find("  a1:"))));
}

TEST_CASE("the chance of a plain wall is that by quadrature") {
  const auto chance = [](const std::string& humidity) {
    const cases::Case source = cases::case_of(
        "quoin: 1\n"
        "spaces:\n"
        "  room: {is: inside, temperature: 18.5, humidity: " +
            humidity +
            "}\n"
            "  outdoors: {is: outside, temperature: 2}\n"
            "materials:\n"
            // 90 of 100 within exp(-0.41125) and exp(0.41125): sd 0.25 of the logarithm.
            "  brick: {conductivity: {value: 0.9, low: 0.596536, high: 1.357838}, density: 1700}\n"
            "  coat: {conductivity: 0.8, density: 1600}\n"
            "section: {wall: {layers: [{material: coat, thickness: 15}, {material: brick, "
            "thickness: "
            "225}]}}\n"
            "criteria: {mould: {surface humidity: 80}}\n",
        "case.yaml");
    ChanceGround ground;
    ground.household = {0.05, 0.0, 0.0};
    const SolvedVariant one = solved(source.variants.front(), {}, ground);
    REQUIRE(one.chances.size() == 1);
    return one.chances.front();
  };
  // Source: own quadrature. 2048 draws scatter by 0.011.
  const Chance half = chance("50");
  CHECK(half.broken == WithinAbs{0.5277709313449542, 0.012});
  CHECK(half.fabric == WithinAbs{0.5441404670401171, 0.012});
  CHECK(half.household == WithinAbs{0.5482930956767805, 0.012});
  REQUIRE(half.highest_safe_humidity);
  CHECK(*half.highest_safe_humidity == WithinAbs{0.46391440131976186, 0.002});
  const Chance less = chance("45");
  CHECK(less.broken == WithinAbs{0.09446169903630772, 0.012});
  CHECK(less.fabric == WithinAbs{0.030270794427502166, 0.01});
  double humidity = 0.0;
  for (const ChanceShare& share : half.shares) {
    if (share.input == "humidity") humidity = share.share;
  }
  CHECK(humidity == WithinAbs{0.46113093394751975, 0.02});
}

TEST_CASE("a climate adds the chance in a month drawn at random and a mild one a lower chance") {
  const auto words = [](const std::string& months) {
    const cases::Case source = cases::case_of(
        "quoin: 1\n"
        "spaces:\n"
        "  room: {is: inside, temperature: 18.5, humidity: 60}\n"
        "  outdoors: {is: outside, temperature: 2, humidity: 85}\n"
        "section: {wall: {layers: [{material: common brick, thickness: 225}]}}\n"
        "criteria: {mould: {surface humidity: 80}}\n" +
            months,
        "case.yaml");
    const SolvedVariant one = solved(source.variants.front(), {}, {});
    REQUIRE(one.chances.size() == 1);
    return one.chances.front().words;
  };
  const auto climate = [](const std::string& temperature) {
    std::string temperatures, humidities, inside;
    for (int month = 0; month < 12; ++month) {
      const char* comma = month == 0 ? "" : ", ";
      temperatures += comma + temperature;
      humidities += std::string(comma) + "85";
      inside += std::string(comma) + "60";
    }
    return "climate:\n  source: invented\n  outside temperature: [" + temperatures +
           "]\n  outside humidity: [" + humidities + "]\n  inside humidity: [" + inside + "]\n";
  };
  const std::string says = "Over the months of the climate: in ";
  CHECK(words("").find(says) == std::string::npos);
  const std::string cold = words(climate("2")), mild = words(climate("17"));
  CHECK(cold.find(says) != std::string::npos);
  CHECK(mild.find(says + "fewer than 1 of 100 cases") != std::string::npos);
  CHECK(cold.find(says + "fewer than 1 of 100 cases") == std::string::npos);
}

}  // namespace quoin::tools
