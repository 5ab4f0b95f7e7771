// SPDX-License-Identifier: Apache-2.0
// What must not be passed over in silence, and what is better left unsaid.
#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "cases/starting_case.hpp"
#include "tools/answer/run.hpp"
#include "tools/answer/words/vapour_words.hpp"
#include "tools/output/report/report.hpp"
#include "tools/output/text/report.hpp"

namespace quoin::tools {
namespace {

Results solved_text(const std::string& text) {
  return results_of(cases::case_of(text, "case.yaml"), "case.yaml", {}, {});
}

/// A wall of an invented house: its layers, what its brick holds, and what else the case asks.
Results wall(const std::string& layers, const std::string& moisture, const std::string& more = "",
             const std::string& humidity = "50") {
  return solved_text(
      "quoin: 1\ntitle: invented\nspaces:\n  room: {is: inside, temperature: 20, humidity: " +
      humidity +
      "}\n  yard: {is: outside, temperature: 2, humidity: 85}\n"
      "materials:\n  wall brick: {like: common brick" +
      (moisture.empty() ? "" : ", moisture: " + moisture) + "}\nsection:\n  wall: {layers: [" +
      layers + "]}\ncriteria: {mould: {surface humidity: 80}}\n" + more);
}

constexpr const char* lined = "[gypsum board, 12.5], [mineral wool, 80], [wall brick, 330]";
constexpr const char* bare = "[wall brick, 330]";
constexpr const char* vapour = "vapour: {conditions: as stated, days: 60}\n";

/// The warnings that hold some words.
std::string warned(const Results& results, const std::string& words) {
  std::string text;
  for (const SolvedVariant& solved : results.variants) {
    for (const std::string& each : solved.warnings) {
      if (each.find(words) != std::string::npos) text += each + "\n";
    }
  }
  return text;
}

bool has(const std::string& text, const std::string& words) {
  return text.find(words) != std::string::npos;
}

/// The months of an invented climate, the coldest as given, and no key beside them.
std::string climate(const std::string& coldest) {
  return "climate:\n  outside temperature: [" + coldest +
         ", 4, 6, 8, 11, 14, 15, 15, 14, 10, 6, 4]\n"
         "  outside humidity: [88, 86, 82, 78, 76, 77, 78, 79, 82, 85, 87, 88]\n";
}

}  // namespace

TEST_CASE("vapour that condenses behind a lining is warned of where the answer is read") {
  const Results wet = wall(lined, "sheltered", vapour);
  CHECK(has(warned(wet, "vapour condenses"), "between mineral wool and wall brick"));
  CHECK(has(text_report(wet, {}, Told::first), "Vapour and drying"));
  const Results tight =
      wall("[gypsum board, 12.5], {membrane: tight}, [mineral wool, 80], [wall brick, 330]",
           "sheltered", vapour);
  CHECK(warned(tight, "vapour condenses") == "");
  // Nobody asked: then it is said that it is not computed, and nothing of what would condense.
  CHECK(has(warned(wall(lined, "sheltered"), "vapour condenses"), "is not computed"));
  CHECK_FALSE(has(warned(wall(lined, "sheltered"), "vapour condenses"), "between mineral wool"));
}

TEST_CASE("no band of vapour is told that does not show beside its number") {
  const Results results = wall(lined, "sheltered", vapour);
  const std::string words = vapour_words(results.variants.front());
  CHECK(has(words, "g/(m²·day)"));
  CHECK_FALSE(has(words, "e-"));
}

TEST_CASE("of saturated masonry it is not said that vapour condenses nowhere") {
  const auto words = [](const std::string& moisture) {
    return vapour_words(wall(bare, moisture, vapour).variants.front());
  };
  CHECK(has(words("saturated"), "no vapour of the airs condenses"));
  CHECK(has(words("saturated"), "The water that 'wall brick' holds"));
  CHECK(has(words("sheltered"), "condenses nowhere"));
  CHECK_FALSE(has(words("sheltered"), "The water that"));
}

TEST_CASE("a limit kept as stated and passed in months of the climate is warned of") {
  const auto remark = [](const std::string& coldest) {
    return warned(wall(bare, "sheltered", climate(coldest)), "months of the climate");
  };
  CHECK(has(remark("-9"), "in 1 of 12 months of the climate: January"));
  CHECK(remark("4") == "");
}

TEST_CASE("what a case asks by keys of its own is answered on the first screen") {
  const auto shown = [](const std::string& more) {
    return text_report(wall(bare, "sheltered", more), {}, Told::first);
  };
  CHECK(has(shown("enough: {moisture: wall brick}\n"), "What would be enough"));
  CHECK(has(shown(climate("4")), "Over the year"));
  CHECK(has(shown("drying: {wet: wall brick, coats: [limewash]}\n"), "Vapour and drying"));
  for (const char* heading : {"What would be enough", "Over the year", "Vapour and drying"})
    CHECK_FALSE(has(shown(""), heading));
}

TEST_CASE("a lining on masonry of unstated moisture is said to be judged as on a dry wall") {
  CHECK(has(warned(wall(lined, ""), "no moisture is stated"), "as on a dry wall"));
  CHECK_FALSE(has(warned(wall(bare, ""), "no moisture is stated"), "as on a dry wall"));
  CHECK(warned(wall(lined, "sheltered"), "no moisture is stated") == "");
}

TEST_CASE("a spot below freezing is told to freeze") {
  const auto frozen = [](const std::string& temperature) {
    return warned(
        solved_text("quoin: 1\ntitle: invented\nspaces:\n"
                    "  barn: {is: inside, temperature: 2, humidity: 70}\n"
                    "  yard: {is: outside, temperature: " +
                    temperature + "}\nsection:\n  wall: {layers: [[common brick, 330]]}\n"),
        "below 0 °C");
  };
  CHECK(has(frozen("-8"), "freezes"));
  CHECK(frozen("1") == "");
}

TEST_CASE("terms and chances are explained where they are told and only there") {
  const auto sure = [](const std::string& criteria, const std::string& humidity) {
    return report::document_of(solved_text("quoin: 1\ntitle: invented\nspaces:\n"
                                           "  room: {is: inside, temperature: 20" +
                                           humidity +
                                           "}\n  yard: {is: outside, temperature: 2}\nsection:\n"
                                           "  wall: {layers: [[common brick, 330]]}\n" +
                                           criteria))
        .first.sure;
  };
  CHECK(has(sure("criteria: {fRsi: 0.75}\n", ", humidity: 50"), "fRsi is how far"));
  CHECK_FALSE(has(sure("", ", humidity: 50"), "fRsi is how far"));
  CHECK(has(sure("", ", humidity: 50"), "How sure for this house"));
  CHECK_FALSE(has(sure("", ""), "How sure for this house"));
}

TEST_CASE("a starting case as it is printed raises no warning") {
  for (const cases::StartingPoint& point : cases::starting_points()) {
    CAPTURE(point.name);
    std::string text = *cases::starting_case(point.name);
    text.erase(text.find("variants:"));
    const Results results = solved_text(text);
    for (const std::string& each : results.variants.front().warnings) {
      CAPTURE(each);
      CHECK(has(each, "one half of a detail"));  // a bay is drawn so, and it must be said
    }
  }
}

}  // namespace quoin::tools
