// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/run.hpp"

#include <optional>
#include <utility>
#include <vector>

#include "solver/findings/cut_planes.hpp"
#include "solver/findings/plain.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/find/drying.hpp"
#include "tools/answer/find/readings.hpp"
#include "tools/answer/find/thermometers.hpp"
#include "tools/answer/find/timber_ends.hpp"
#include "tools/answer/find/unheated.hpp"
#include "tools/answer/find/vapour_check.hpp"
#include "tools/answer/find/year.hpp"
#include "tools/answer/judge/enough.hpp"
#include "tools/answer/judge/lined.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/numbers.hpp"
#include "tools/answer/survey/enough_ninety.hpp"
#include "tools/answer/survey/explain.hpp"
#include "tools/answer/survey/household_doubt.hpp"
#include "tools/answer/words/compare.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/answer/words/short_legs.hpp"
#include "tools/answer/words/summary.hpp"
#include "tools/answer/words/vapour_words.hpp"
#include "tools/answer/words/wetness_remarks.hpp"
#include "tools/answer/words/year_remarks.hpp"

namespace quoin::tools {

SolvedVariant solved(const cases::Variant& variant, const solver::Effort& effort,
                     const ChanceGround& ground) {
  SolvedVariant result;
  result.variant = variant;
  const std::vector<std::string> evaporation = solve_numbers(result, effort, solver::solution_of);
  prove_thermometers(result, effort);
  for (const geometry::Flank& flank : variant.flanks) {
    result.plain.push_back(solver::plain_part(flank, result.surface.physics, result.heat.physics,
                                              temperatures_of(result.variant)));
  }
  result.timber_ends = timber_ends(result);
  if (!result.surface.airs.empty()) {
    const solver::Solution& surface = result.surface;
    const geometry::Point coldest = surface.airs.front().coldest.place;
    result.cut_planes =
        surface.triangles
            ? solver::cut_planes(*surface.triangles, surface.field.airs, surface.physics, coldest)
            : solver::cut_planes(surface.field, surface.physics, coldest);
  }
  const ShortLegs legs = short_legs(result, effort);
  result.cut_off = legs.matters;
  result.years = years_of(result);
  result.chances = chances_of(result, ground, effort.linear);
  grade_by_chance(result);
  result.outcomes = outcomes(result);
  put_into_words(result);
  WhatIsEnough enough = what_is_enough(result, effort);
  result.enough = std::move(enough.each);
  add_enough_at_ninety(result, effort);
  result.vapour = vapour_check(result, effort.linear);
  result.drying = drying_ledger(result, effort.linear);
  result.warnings = warnings(result, !legs.remark.empty());
  result.warnings.insert(result.warnings.end(), evaporation.begin(), evaporation.end());
  result.warnings.insert(result.warnings.end(), enough.warnings.begin(), enough.warnings.end());
  const std::vector<std::string> wetness = wetness_remarks(result);
  result.warnings.insert(result.warnings.end(), wetness.begin(), wetness.end());
  if (!legs.remark.empty()) result.warnings.insert(result.warnings.begin(), legs.remark);
  if (std::string lining = lining_remark(variant); !lining.empty())
    result.warnings.push_back(std::move(lining));
  if (std::string vapour = vapour_remark(result); !vapour.empty())
    result.warnings.push_back(std::move(vapour));
  const std::vector<std::string> over_the_year = year_remarks(result);
  result.warnings.insert(result.warnings.end(), over_the_year.begin(), over_the_year.end());
  result.summary = summary(result) + words_for_unheated(result) + words_for_timber_ends(result);
  return result;
}

Results results_of(const cases::Case& source, const std::string& file, const solver::Effort& effort,
                   const Progress& progress, std::string_view only) {
  Results results{source.title, source.note, file, source.sha256, {}, {}, source.text};
  ChanceGround ground{source.household, nullptr, ""};
  std::optional<WorkedSurvey> worked;
  if (source.survey && !source.survey->readings.empty()) {
    worked = worked_survey({{"", &source.variants.front()}}, *source.survey, effort.linear);
    results.survey = worked->findings;
    ground.worked = &*worked;
  }
  for (std::size_t v = 0; v < source.variants.size(); ++v) {
    if (!only.empty() && source.variants[v].name != only) continue;
    if (progress) progress(source.variants[v].name, v, source.variants.size());
    results.variants.push_back(solved(source.variants[v], effort, ground));
    SolvedVariant& last = results.variants.back();
    if (!may_have_been_read(results.variants.front(), last)) last.variant.readings.clear();
  }
  if (results.survey && only.empty()) {
    std::vector<const SolvedVariant*> all;
    for (const SolvedVariant& one : results.variants) all.push_back(&one);
    tell_household_doubt(all, source.household, *results.survey);
  }
  if (only.empty()) results.changes = changes(results.variants);
  return results;
}

}  // namespace quoin::tools
