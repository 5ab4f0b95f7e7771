// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <sstream>

#include "tests/tools/by_hand.hpp"
#include "tests/tools/golden.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/output/text/report.hpp"

using namespace quoin;
using namespace quoin::tools;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

TEST_CASE("the terminal report is the golden one") {
  CHECK(testing::is_golden(text_report(testing::results_by_hand(), {}), "report.txt"));
}

TEST_CASE("the report fits 80 columns whatever the names") {
  for (const std::string& name :
       {std::string("hall"), std::string(10000, 'W'), std::string("a b c "),
        std::string("\xE5\xAE\xB6") + "家家家家家家家"}) {
    for (const bool ascii : {false, true}) {
      for (const std::string& line :
           lines_of(text_report(testing::results_named(name), {ascii, false, 80}))) {
        CAPTURE(line);
        CHECK(columns_of(line) <= 80);
      }
    }
  }
}

TEST_CASE("in ASCII the report holds nothing else") {
  const std::string report = text_report(testing::results_named("Küche “links” — 20 °C"), {true});
  for (const char letter : report) CHECK((letter == '\n' || (letter >= ' ' && letter <= '~')));
  CHECK(text_report(testing::results_named("Küche"), {}).find("Küche") != std::string::npos);
}

TEST_CASE("control characters in names never reach the terminal") {
  const Results results =
      testing::results_named("\x1b[2Jclear\a\b\x7f \xC2\x9b \xE2\x80\xAE end\r");
  const std::string report = text_report(results, {});
  for (const char letter : report) {
    const auto byte = static_cast<unsigned char>(letter);
    CHECK((byte == '\n' || byte >= 0x20));
    CHECK(byte != 0x7f);
  }
  CHECK(report.find("\xC2\x9b") == std::string::npos);
  CHECK(report.find("\xE2\x80\xAE") == std::string::npos);
  CHECK(report.find("clear") != std::string::npos);
}

TEST_CASE("colour shows only where it is wanted") {
  const Results results = testing::results_by_hand();
  CHECK(text_report(results, {}).find('\x1b') == std::string::npos);
  CHECK(text_report(results, {false, true}).find("\x1b[1;31mwet") != std::string::npos);
}

TEST_CASE("rooms of one variant have a row each") {
  Results results = testing::results_by_hand();
  for (SolvedVariant& solved : results.variants) {
    const SpaceId porch = solved.variant.spaces.add(
        testing::space("parlour", cases::SpaceKind::inside, 15.0, 0.5, SpaceId(2u)));
    solved.surface.airs.push_back(solved.surface.airs.front());
    solved.surface.airs.back().air = porch;
  }
  for (SolvedVariant& solved : results.variants) solved.outcomes = outcomes(solved);
  const std::string report = text_report(results, {});
  CHECK(report.find("  hall  ") != std::string::npos);
  CHECK(report.find("  parlour  ") != std::string::npos);
}

TEST_CASE("the first page tells less than the whole report and begins the same") {
  const Results results = testing::results_by_hand();
  const std::string first = text_report(results, {}, Told::first);
  const std::string all = text_report(results, {}, Told::all);
  CHECK(first.find("Thermal coupling") == std::string::npos);
  CHECK(all.find("Thermal coupling") != std::string::npos);
  const std::size_t sure = first.find("computed to within");
  REQUIRE(sure != std::string::npos);
  CHECK(all.substr(0, sure) == first.substr(0, sure));
}

TEST_CASE("a warning all variants share is said once, without their names") {
  const std::string report = text_report(testing::results_by_hand(), {});
  const auto first = report.find("plaster: its conductivity is a guess");
  REQUIRE(first != std::string::npos);
  CHECK(report.find("its conductivity is a guess", first + 20) == std::string::npos);
  Results results = testing::results_by_hand();
  results.variants[1].warnings.clear();
  CHECK(text_report(results, {}).find("is a guess (as found)") != std::string::npos);
}

TEST_CASE("what does not exist is a dash, not a number") {
  Results results = testing::results_by_hand();
  results.variants[0].surface.airs[0].coldest.factor = {std::nan(""), std::nan("")};
  results.variants[0].humidity.clear();
  results.variants[0].outcomes = outcomes(results.variants[0]);
  const std::string report = text_report(results, {});
  CHECK(report.find("nan") == std::string::npos);
}

}  // namespace
