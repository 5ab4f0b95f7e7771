// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/run.hpp"

#include <optional>
#include <utility>

#include "solver/findings/cut_planes.hpp"
#include "solver/findings/plain.hpp"
#include "tools/answer/ask/conditions.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/ask/question.hpp"
#include "tools/answer/find/drying.hpp"
#include "tools/answer/find/timber_ends.hpp"
#include "tools/answer/find/unheated.hpp"
#include "tools/answer/find/vapour_check.hpp"
#include "tools/answer/find/wet_surfaces.hpp"
#include "tools/answer/find/year.hpp"
#include "tools/answer/judge/enough.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/survey/enough_ninety.hpp"
#include "tools/answer/survey/explain.hpp"
#include "tools/answer/words/compare.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/answer/words/summary.hpp"
#include "tools/answer/words/year_remarks.hpp"

namespace quoin::tools {
namespace {

/// The floor of a variant on the ground without its wall, solved for heat flow.
std::optional<solver::Solution> floor_alone(const cases::Variant& variant,
                                            const solver::Effort& effort) {
  if (variant.floor_alone.empty()) return std::nullopt;
  cases::Variant alone = variant;
  alone.sheet = variant.floor_alone;
  alone.probes.clear();
  return solver::solution_of(question_of(alone, materials::Purpose::heat_flow), effort);
}

}  // namespace

SolvedVariant solved(const cases::Variant& variant, const solver::Effort& effort,
                     const ChanceGround& ground) {
  SolvedVariant result;
  result.variant = variant;
  result.conductivity = conductivities(variant);
  result.heat = solver::solution_of(question_of(variant, materials::Purpose::heat_flow), effort);
  balance_unheated(result);
  result.surface = solver::solution_of(
      question_of(result.variant, materials::Purpose::surface_temperature), effort);
  const std::vector<std::string> evaporation = evaporate(result);
  for (const geometry::Flank& flank : variant.flanks) {
    result.plain.push_back(solver::plain_part(flank, result.surface.physics, result.heat.physics,
                                              temperatures_of(result.variant)));
  }
  const std::optional<solver::Solution> floor = floor_alone(result.variant, effort);
  result.psi = solver::linear_transmittances(variant.flanks, result.heat, floor ? &*floor : nullptr,
                                             losses_of(result.variant));
  for (solver::LinearTransmittance& psi : result.psi) {
    psi.value.value *= variant.halves;
    psi.value.band *= variant.halves;
  }
  result.timber_ends = timber_ends(result);
  if (!result.surface.airs.empty()) {
    result.cut_planes = solver::cut_planes(result.surface.field, result.surface.physics,
                                           result.surface.airs.front().coldest.place);
  }
  result.humidity = humidities(result);
  result.verdicts = verdicts(result);
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
  result.warnings = warnings(result);
  result.warnings.insert(result.warnings.end(), evaporation.begin(), evaporation.end());
  result.warnings.insert(result.warnings.end(), enough.warnings.begin(), enough.warnings.end());
  const std::vector<std::string> over_the_year = year_remarks(result);
  result.warnings.insert(result.warnings.end(), over_the_year.begin(), over_the_year.end());
  result.summary = summary(result) + words_for_unheated(result) + words_for_timber_ends(result);
  return result;
}

Results results_of(const cases::Case& source, const std::string& file, const solver::Effort& effort,
                   const Progress& progress) {
  Results results{source.title, source.note, file, source.sha256, {}, {}, source.text};
  ChanceGround ground{source.household, nullptr, ""};
  std::optional<WorkedSurvey> worked;
  if (source.survey && !source.survey->readings.empty()) {
    worked = worked_survey({{"", &source.variants.front()}}, *source.survey, effort.linear);
    results.survey = worked->findings;
    ground.worked = &*worked;
  }
  for (std::size_t v = 0; v < source.variants.size(); ++v) {
    if (progress) progress(source.variants[v].name, v, source.variants.size());
    results.variants.push_back(solved(source.variants[v], effort, ground));
  }
  results.changes = changes(results.variants);
  return results;
}

}  // namespace quoin::tools
