// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/house_run.hpp"

#include <fmt/format.h>

#include <optional>
#include <string>

#include "tools/answer/survey/explain.hpp"
#include "tools/answer/survey/household_doubt.hpp"
#include "tools/answer/words/compare.hpp"

namespace quoin::tools {
namespace {

/// What is left to tell of the survey of a house in a section after the first: that it is fit, and
/// where the rest stands.
SurveyFindings told_with(const std::string& section, const SurveyFindings& whole) {
  SurveyFindings rest;
  rest.quality.fit = whole.quality.fit;
  rest.words = {fmt::format(
      "All readings of the house were worked out together: what they tell stands with '{}'.",
      section)};
  rest.basis_error = whole.basis_error;
  rest.solves = whole.solves;
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
      results.survey =
          each.empty() ? worked->findings : told_with(house.parts.front().name, worked->findings);
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
