// SPDX-License-Identifier: Apache-2.0
// The law for words on every example, every starting case and many cases at random.
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>
#include <vector>

#include "cases/read.hpp"
#include "cases/starting_case.hpp"
#include "tests/tools/law/random_case.hpp"
#include "tests/tools/law/words_law.hpp"
#include "tools/answer/run.hpp"
#include "tools/answer/words/advice.hpp"
#include "tools/draw/pictures.hpp"
#include "tools/output/html/parts.hpp"
#include "tools/output/html/report.hpp"
#include "tools/output/json/findings.hpp"
#include "tools/output/report/report.hpp"
#include "tools/output/text/report.hpp"

namespace quoin::testing {
namespace {

using tools::Results;
using Faults = std::vector<std::string>;

Results solved_text(const std::string& text, const std::string& name) {
  return tools::results_of(cases::case_of_house(text, name, {}), name, {}, {});
}

std::vector<std::filesystem::path> examples() {
  std::vector<std::filesystem::path> paths;
  for (const auto& entry :
       std::filesystem::directory_iterator(QUOIN_SOURCE_DIR "/cases/examples")) {
    if (entry.path().extension() == ".yaml") paths.push_back(entry.path());
  }
  std::sort(paths.begin(), paths.end());
  return paths;
}

std::string text_of(const std::filesystem::path& path) {
  std::ifstream file(path);
  return {std::istreambuf_iterator<char>(file), {}};
}

/// Faults in one text, so that a test that fails says them.
std::string told_of(const Faults& faults) {
  std::string text;
  for (const std::string& fault : faults) text += fault + "\n";
  return text;
}

/// Every table of the document as the page shows it, or its caption.
Faults missing_on_page(const Results& results) {
  Faults missing;
  const std::string page = tools::report_page(results);
  for (const auto& section : tools::report::document_of(results).sections) {
    for (const auto& block : section.blocks) {
      const auto* table = std::get_if<tools::report::Table>(&block);
      if (table != nullptr && page.find(tools::html_table(*table)) == std::string::npos)
        missing.push_back(table->caption);
    }
  }
  return missing;
}

void every_third_example_from(std::size_t first) {
  const auto paths = examples();
  REQUIRE(paths.size() >= 15);
  for (std::size_t k = first; k < paths.size(); k += 3) {
    CAPTURE(paths[k].filename().string());
    const Results results = solved_text(text_of(paths[k]), paths[k].string());
    CHECK(told_of(faults_of(results)) == "");
    CHECK(told_of(missing_on_page(results)) == "");
  }
}

void random_cases_from(std::uint64_t first) {
  for (std::uint64_t seed = first; seed < first + 100; ++seed) {
    CAPTURE(seed);
    CHECK(told_of(faults_of(solved_text(RandomCase(seed).text(), "random.yaml"))) == "");
  }
}

/// A case in which something fails, something gets colder and something holds.
const Results& told() {
  static const Results results = solved_text(
      text_of(QUOIN_SOURCE_DIR "/cases/examples/lock_keepers_house_reveal.yaml"), "reveal.yaml");
  return results;
}

}  // namespace

TEST_CASE("the law for words holds on the first third of the examples") {
  every_third_example_from(0);
}
TEST_CASE("the law for words holds on the second third of the examples") {
  every_third_example_from(1);
}
TEST_CASE("the law for words holds on the last third of the examples") {
  every_third_example_from(2);
}

TEST_CASE("the law for words holds on every starting case") {
  for (const cases::StartingPoint& point : cases::starting_points()) {
    CAPTURE(point.name);
    CHECK(told_of(faults_of(solved_text(*cases::starting_case(point.name), "new.yaml"))) == "");
  }
}

TEST_CASE("the law for words holds on random cases 0 to 99") { random_cases_from(0); }
TEST_CASE("the law for words holds on random cases 100 to 199") { random_cases_from(100); }
TEST_CASE("the law for words holds on random cases 200 to 299") { random_cases_from(200); }
TEST_CASE("the law for words holds on random cases 300 to 399") { random_cases_from(300); }
TEST_CASE("the law for words holds on random cases 400 to 499") { random_cases_from(400); }

TEST_CASE("the law for words finds figures that say nothing or the contrary") {
  CHECK(faults_of_figures("fRsi 0.546 ± 0.001, from 15.6 to 15.7 °C at -0.2, 10 mm").empty());
  for (const char* doctored :
       {"psi 0.100 ± 0.000", "lowers it from 15.6 to 15.6 °C", "an excess of -0 Pa", "−0.00 W",
        "1.134e+04 Pa", "31.2 ± 2e-13 g", "0.15 m3/m3", "fRsi nan"})
    CHECK_MESSAGE(faults_of_figures(doctored).size() == 1, doctored);
}

TEST_CASE("the law for words finds an outcome that its numbers do not bear") {
  REQUIRE(told_of(faults_of(told())) == "");
  using Kind = tools::Outcome::Kind;
  for (const Kind kind : {Kind::safe, Kind::marginal, Kind::mould, Kind::fails}) {
    Results doctored = told();
    doctored.variants[0].outcomes.at(0).kind = kind;
    CHECK(faults_of_outcomes(tools::findings_json(doctored)) != Faults{});
  }
  Results silent = told();
  silent.variants[0].outcomes.at(0).broken.clear();
  CHECK(faults_of_outcomes(tools::findings_json(silent)) != Faults{});
  Results sure = told();
  auto& last = sure.variants.back().outcomes.at(0);
  last.kind = Kind::safe;
  last.chance = 0.4;
  CHECK(faults_of_outcomes(tools::findings_json(sure)) != Faults{});
}

TEST_CASE("the law for words finds a sentence that says otherwise than the outcomes") {
  Results doctored = told();
  const std::string sentence = tools::advice_on(doctored).sentence;
  CHECK(faults_of_sentence(sentence, doctored) == Faults{});
  doctored.variants[0].outcomes.at(0).broken.push_back({"corrosion", 0.6, 0.7, "%RH", false});
  CHECK(faults_of_sentence(sentence, doctored).size() == 1);
  CHECK(faults_of_sentence("The frame edge is safe: 11.0 °C, where 11.1 °C is needed to stay dry "
                           "and 14.5 °C against mould.",
                           told())
            .size() == 1);
  CHECK(faults_of_sentence("The frame edge gets wet: 11.1 °C, where 11.1 °C is needed to stay dry "
                           "and 14.5 °C against mould.",
                           told())
            .size() == 1);
}

TEST_CASE("the law for words finds a limit that is told to be kept and is not") {
  CHECK(faults_of_sentence("The frame edge does not meet 'fRsi' (fRsi 0.5, where 0.75 is asked "
                           "for). In the air as stated it stays free of mould: 11.0 °C, where 14.5 "
                           "°C is needed.",
                           told())
            .size() == 1);
}

TEST_CASE("the law for words finds what is told to get colder and does not") {
  REQUIRE(faults_of_changes(told()) == Faults{});
  Results invented = told();
  tools::Change& change = invented.changes.at(0);  // saturated: drawn as before
  change.colder.push_back({"the wall", change.colder.at(0).place, 12.0, 10.0});
  CHECK(faults_of_changes(invented) != Faults{});
  Results warmer = told();
  warmer.changes.at(0).colder = {{"the wall", {0.015, -0.4}, 12.0, 12.5}};
  CHECK(faults_of_changes(warmer) != Faults{});
  // The place beside a spot that is warmer, told by the name of the spot.
  Results misnamed = told();
  const auto warmed =
      std::find_if(misnamed.changes.begin(), misnamed.changes.end(),
                   [](const tools::Change& change) { return change.after > change.before; });
  REQUIRE(warmed != misnamed.changes.end());
  tools::Change& raised = *warmed;
  raised.colder = {{"the frame edge",
                    raised.colder.empty() ? geometry::Point{} : raised.colder.front().place, 14.0,
                    13.5}};
  raised.words += "; a place beside the frame edge gets colder, from 14.0 to 13.5 °C";
  const std::size_t beside = faults_of_changes(misnamed).size();
  raised.words += "; the frame edge gets colder, from 14.0 to 13.5 °C";
  CHECK(faults_of_changes(misnamed).size() == beside + 1);
  Results silent = told();
  silent.changes.at(0).colder.clear();
  silent.changes.at(0).words = "saturated: leaves the coldest spot where it is";
  CHECK(faults_of_changes(silent) != Faults{});
}

TEST_CASE("the law for words finds a table that is told in two ways") {
  const std::string text = tools::text_report(told(), {.width = 4000}, tools::Told::all);
  CHECK(told_of(faults_of_tables(told(), text)) == "");
  std::string doctored = text;
  doctored.replace(doctored.find("11.0", doctored.find("How it comes out")), 4, "11.9");
  CHECK(faults_of_tables(told(), doctored) != Faults{});
}

}  // namespace quoin::testing
