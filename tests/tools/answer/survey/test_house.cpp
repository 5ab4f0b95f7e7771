// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <fstream>
#include <map>
#include <optional>
#include <string>

#include "cases/house.hpp"
#include "cases/meaning/starting_survey.hpp"
#include "cases/read.hpp"
#include "cases/text/faults.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/house_run.hpp"
#include "tools/answer/survey/explain.hpp"
#include "tools/answer/words/advice.hpp"

namespace quoin::tools {
namespace {

using testing::WithinRel;

std::optional<std::string> file_in(const std::string& folder, const std::string& name) {
  std::ifstream file(folder + name, std::ios::binary);
  if (!file) return std::nullopt;
  return std::string{std::istreambuf_iterator<char>(file), {}};
}

cases::Files in_memory(std::map<std::string, std::string> files) {
  return [files = std::move(files)](const std::string& name) -> std::optional<std::string> {
    const auto found = files.find(name);
    return found == files.end() ? std::nullopt : std::optional(found->second);
  };
}

const std::string section =
    "quoin: 1\n"
    "spaces:\n"
    "  room: {is: inside, temperature: 18.5, humidity: 60}\n"
    "  outdoors: {is: outside, temperature: 2}\n"
    "section:\n"
    "  wall:\n"
    "    height: 3000\n"
    "    layers: [{material: lime plaster, thickness: 15}, {material: common brick, thickness: "
    "225}]\n"
    "probes: {a: [0, 400], b: [0, 800], c: [0, 2000], d: [0, 2500]}\n"
    "readings:\n"
    "  a: {temperature: 10.6, with: probe}\n"
    "  b: {temperature: 10.9, with: probe}\n"
    "  c: {temperature: 13.1, with: probe}\n"
    "  d: {temperature: 13.4, with: probe}\n";

std::string survey(const std::string& in) {
  return "survey:\n"
         "  hour: 7\n"
         "  heating steady for: 20 h\n"
         "  instruments: {probe: {plus or minus: 0.4, shared: 0.6}}\n"
         "  zones: {below: {" +
         in + "of: common brick, y: [0, 1200]}}\n";
}

const Explained& better(const SurveyFindings& findings) {
  for (const Explained& one : findings.explanations) {
    if (one.what.kind == cases::ExplanationKind::conducts_better) return one;
  }
  FAIL("no such explanation");
  return findings.explanations.front();
}

}  // namespace

TEST_CASE("a house of one section tells what its case tells") {
  const cases::Case alone = cases::case_of(section + survey(""), "case.yaml");
  const SurveyFindings of_case =
      worked_survey({{"", &alone.variants.front()}}, *alone.survey, {}).findings;
  const cases::House house =
      cases::house_of("quoin: 1\nhouse: {wall: wall.yaml}\n" + survey("in: wall, "), "house.yaml",
                      in_memory({{"wall.yaml", section}}));
  const SurveyFindings of_house =
      worked_survey({{"wall", &house.parts.front().source.variants.front()}}, house.survey, {})
          .findings;
  REQUIRE(of_case.explanations.size() == of_house.explanations.size());
  for (std::size_t e = 0; e < of_case.explanations.size(); ++e) {
    CHECK(of_case.explanations[e].what.kind == of_house.explanations[e].what.kind);
    CHECK(of_case.explanations[e].log_odds == of_house.explanations[e].log_odds);
  }
  CHECK(better(of_case).unknowns.front().median == better(of_house).unknowns.front().median);
}

TEST_CASE("the demo house finds its corner conducting better and says what to measure next") {
  const std::string folder = QUOIN_SOURCE_DIR "/cases/examples/house/";
  const auto files = [&](const std::string& name) { return file_in(folder, name); };
  const cases::House house = cases::house_of(*files("house.yaml"), "house.yaml", files);
  REQUIRE(house.parts.size() == 4);
  const std::vector<Results> results = results_of(house, {});
  REQUIRE(results.size() == 4);
  REQUIRE(results.front().survey);
  const SurveyFindings& found = *results.front().survey;
  REQUIRE(!found.explanations.empty());
  CHECK(found.explanations.front().what.kind == cases::ExplanationKind::conducts_better);
  CHECK(found.explanations.front().what.of == "corner masonry");
  CHECK(!found.next.empty());
  // The survey of the house is told once; the other sections say where.
  for (std::size_t s = 1; s < results.size(); ++s) {
    REQUIRE(results[s].survey);
    REQUIRE(results[s].survey->words.size() == 1);
    CHECK(results[s].survey->words.front().find("stands with 'wall'") != std::string::npos);
  }
  // How well each explanation fits is told where its zone lies, too, and what it asks for first.
  const auto asks = [](const Results& one) {
    const std::vector<std::string> steps = advice_on(one).steps;
    return !steps.empty() && steps.front().find("sample of corner masonry") != std::string::npos;
  };
  CHECK_FALSE(results[1].survey->explanations.empty());
  CHECK(asks(results[1]));
  CHECK(results[2].survey->explanations.empty());
  CHECK_FALSE(asks(results[2]));
  for (const Results& one : results) {
    for (const SolvedVariant& variant : one.variants) CHECK(!variant.chances.empty());
  }
}

TEST_CASE("what is wrong with a house is told with its file") {
  const auto faults = [](const std::string& text, std::map<std::string, std::string> files) {
    try {
      (void)cases::house_of(text, "house.yaml", in_memory(std::move(files)));
    } catch (const cases::InputError& error) {
      return error.faults;
    }
    return std::vector<cases::Fault>{};
  };
  const auto missing = faults("quoin: 1\nhouse: {wall: walls.yaml}\n", {{"wall.yaml", section}});
  REQUIRE(missing.size() == 1);
  CHECK(missing[0].file == "house.yaml");
  const auto broken =
      faults("quoin: 1\nhouse: {wall: wall.yaml}\n", {{"wall.yaml", section + "probs: {}\n"}});
  REQUIRE(broken.size() == 1);
  CHECK(broken[0].file == "wall.yaml");
  const auto unknown = faults("quoin: 1\nhouse: {wall: wall.yaml}\n" + survey("in: hall, "),
                              {{"wall.yaml", section}});
  REQUIRE(unknown.size() == 1);
  CHECK(unknown[0].what == "the house has no section 'hall'");
  CHECK(faults("quoin: 1\nhouse: {}\n", {}).size() == 1);
  const auto twice =
      faults("quoin: 1\nhouse: {wall: wall.yaml, other: wall.yaml}\n", {{"wall.yaml", section}});
  REQUIRE(twice.size() == 1);
  CHECK(twice[0].what == "'wall.yaml' is the section 'wall', too");
  const auto nested = faults("quoin: 1\nhouse: {all: house.yaml}\n",
                             {{"house.yaml", "quoin: 1\nhouse: {wall: wall.yaml}\n"}});
  REQUIRE(nested.size() == 1);
  CHECK(nested[0].what == "'house.yaml' is a house itself");
  CHECK(faults("quoin: 1\nhouse: {wall: wall.yaml}\n" + survey("in: wall, "),
               {{"wall.yaml", section}})
            .empty());
}

TEST_CASE("starting files of surveys read without a fault") {
  const cases::Case one = cases::case_of(cases::starting_survey(), "survey.yaml");
  REQUIRE(one.survey);
  CHECK(one.survey->readings.size() == 6);
  const std::string corner(cases::starting_survey());
  const std::string without =
      corner.substr(0, corner.find("survey:\n  hour")) + corner.substr(corner.find("criteria:"));
  const cases::House house =
      cases::house_of(cases::starting_house(), "house.yaml",
                      in_memory({{"wall.yaml", section.substr(0, section.find("probes"))},
                                 {"corner.yaml", without}}));
  CHECK(house.parts.size() == 2);
}

}  // namespace quoin::tools
