// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "tools/answer/survey/explain.hpp"

namespace quoin::testing {

/// A corner with a survey, invented. `readings`: lines of the part; `more`: lines of the survey.
inline std::string corner(const std::string& readings, const std::string& more = "",
                          double outdoors = 2.0) {
  return "quoin: 1\n"
         "spaces:\n"
         "  room: {is: inside, temperature: 18.5, humidity: 60}\n"
         "  outdoors: {is: outside, temperature: " +
         std::to_string(outdoors) +
         "}\n"
         "materials:\n"
         "  wall brick: {like: common brick, moisture: sheltered}\n"
         "section:\n"
         "  corner:\n"
         "    leg: 1800\n"
         "    layers: [{material: lime plaster, thickness: 15}, {material: wall brick, thickness: "
         "225}]\n"
         "probes: {b0: [240, 240], b1: [290, 240], b2: [390, 240], b3: [540, 240], b4: [240, 540], "
         "a1: [1440, 240], a2: [240, 1440], o1: [540, 0]}\n"
         "readings:\n" +
         readings +
         "survey:\n"
         "  hour: 7\n"
         "  heating steady for: 20 h\n"
         "  instruments: {probe: {plus or minus: 0.4, shared: 0.6}}\n"
         "  zones: {masonry: {of: wall brick, x: [0, 800], y: [0, 800]}}\n"
         "  air: {outdoors: {lowest: 0, highest: 4}}\n" +
         more;
}

inline const std::string cold =
    "  b0: {temperature: 7.0, with: probe}\n"
    "  b1: {temperature: 8.6, with: probe}\n"
    "  b2: {temperature: 9.6, with: probe}\n"
    "  b3: {temperature: 10.6, with: probe}\n"
    "  b4: {temperature: 10.5, with: probe}\n"
    "  a1: {temperature: 13.6, with: probe}\n"
    "  a2: {temperature: 13.5, with: probe}\n"
    "  o1: {temperature: 4.4, with: probe}\n";

inline tools::SurveyFindings findings_of(const std::string& text) {
  const cases::Case source = cases::case_of(text, "case.yaml");
  REQUIRE(source.survey);
  return tools::worked_survey({{"", &source.variants.front()}}, *source.survey, {}).findings;
}

/// All sentences that are told of readings.
inline std::string all_words(const tools::SurveyFindings& findings) {
  std::string words;
  for (const std::string& one : findings.words) words += one + '\n';
  for (const tools::QualityRule& rule : findings.quality.rules) words += rule.words + '\n';
  for (const tools::NextStep& step : findings.next) words += step.words + '\n';
  return words;
}

}  // namespace quoin::testing
