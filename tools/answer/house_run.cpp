// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/house_run.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string>

#include "tools/answer/survey/explain.hpp"
#include "tools/answer/survey/household_doubt.hpp"
#include "tools/answer/survey/survey_words.hpp"
#include "tools/answer/words/compare.hpp"

namespace quoin::tools {
namespace {

/// Whether the zone or stretch that explains the readings best lies in a section.
bool explained_in(const std::string& section, const cases::Survey& survey,
                  const SurveyFindings& whole) {
  if (whole.explanations.empty()) return false;
  const std::string& of = whole.explanations.front().what.of;
  const auto is_it = [&](const auto& each) { return each.name == of && each.section == section; };
  return std::any_of(survey.zones.begin(), survey.zones.end(), is_it) ||
         std::any_of(survey.stretches.begin(), survey.stretches.end(), is_it);
}

/// What is left to tell of the survey of a house in a section after the first: that it is fit, how
/// well the readings fit what is in this section, and where the rest stands.
SurveyFindings told_with(const std::string& first, const std::string& section,
                         const cases::Survey& survey, const SurveyFindings& whole) {
  SurveyFindings rest;
  rest.quality.fit = whole.quality.fit;
  rest.words = {fmt::format(
      "All readings of the house were worked out together: what they tell stands with '{}'.",
      first)};
  rest.basis_error = whole.basis_error;
  rest.solves = whole.solves;
  rest.quality.may_tell_conductivity = bears_on_chance(whole);
  if (!explained_in(section, survey, whole)) return rest;
  rest.explanations = whole.explanations;
  for (Explained& each : rest.explanations) {
    each.unknowns.clear();
    each.readings.clear();
  }
  return rest;
}

}  // namespace

std::vector<Results> results_of(const cases::House& house, const solver::Effort& effort,
                                const Progress& progress) {
  std::vector<HouseSection> sections;
  std::size_t all = 0, number = 0;
  for (const cases::HousePart& part : house.parts) {
    sections.push_back({part.name, &part.source.variants.front()});
    all += part.source.variants.size();
  }
  std::optional<WorkedSurvey> worked;
  if (!house.survey.readings.empty()) worked = worked_survey(sections, house.survey, effort.linear);
  std::vector<Results> each;
  for (const cases::HousePart& part : house.parts) {
    const cases::Case& source = part.source;
    Results results{source.title, source.note, part.file, source.sha256, {}, {}, source.text, {}};
    const ChanceGround ground{house.household, worked ? &*worked : nullptr, part.name};
    for (const cases::Variant& variant : source.variants) {
      if (progress) progress(part.name + ": " + variant.name, number++, all);
      results.variants.push_back(solved(variant, effort, ground));
    }
    results.changes = changes(results.variants);
    if (worked)
      results.survey = each.empty() ? worked->findings
                                    : told_with(house.parts.front().name, part.name, house.survey,
                                                worked->findings);
    each.push_back(std::move(results));
  }
  if (worked) {
    std::vector<const SolvedVariant*> variants;
    for (const Results& results : each) {
      for (const SolvedVariant& one : results.variants) variants.push_back(&one);
    }
    tell_household_doubt(variants, house.household, *each.front().survey);
  }
  return each;
}

}  // namespace quoin::tools
