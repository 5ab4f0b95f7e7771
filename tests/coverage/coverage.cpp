// SPDX-License-Identifier: Apache-2.0
#include "tests/coverage/coverage.hpp"

#include <algorithm>
#include <cmath>
#include <random>
#include <string>

#include "materials/criterion.hpp"
#include "materials/moist_air.hpp"
#include "tools/answer/survey/chance.hpp"
#include "tools/answer/survey/fabric_after.hpp"

namespace quoin::testing {
namespace {

constexpr double put_aside_at = 2.302585093;  // natural logarithm of 10

bool same(const cases::Explanation& a, const cases::Explanation& b) {
  return a.kind == b.kind && a.of == b.of && a.also == b.also;
}

std::optional<Held> held(const tools::Explained& explained, const std::string& key, double truth) {
  for (const tools::Learned& one : explained.unknowns) {
    if (one.key == key) return Held{one.low <= truth && truth <= one.high, 0.0};
  }
  return std::nullopt;
}

/// The share of draws in which an unknown lies below the truth.
double rank_of(const tools::WorkedSurvey& worked, const tools::InferredExplanation& explanation,
               tools::UnknownKind kind, const std::string& of, double truth) {
  const auto u = *worked.model.find(kind, of);
  const tools::Weighted values = tools::over_draws(
      explanation,
      [&](const tools::Inferred&, std::span<const double> unknowns) { return unknowns[u]; });
  const double at = std::log(truth / worked.model.unknowns[u].reference);
  double below = 0.0;
  for (std::size_t k = 0; k < values.values.size(); ++k)
    below += values.values[k] < at ? values.weights[k] : 0.0;
  return below;
}

/// The chances of mould in a drier and a damper room beside whether it was at risk there on a day
/// drawn at random, with the household as uncertain as it is taken to be.
std::vector<std::pair<double, bool>> broken_of(const MadeSurvey& made,
                                               const tools::WorkedSurvey& worked,
                                               std::uint32_t number) {
  std::vector<std::pair<double, bool>> all;
  if (worked.inferred.empty() || !worked.findings.quality.may_tell_conductivity) return all;
  constexpr std::size_t draws = 1024;
  cases::Variant variant = made.source.variants.front();
  const tools::SurfaceField field("", variant, tools::carried_over(worked.model), {});
  tools::FabricDraws fabric = tools::fabric_after(worked, field, "", draws);
  tools::solve_states(field, fabric);
  const cases::SpaceId room = field.rooms()[0];
  const double inside = variant.spaces[room].temperature;
  double outside = inside;
  std::vector<double> airs;
  for (const cases::SpaceId air : field.section().airs) {
    airs.push_back(variant.spaces[air].temperature);
    outside = std::min(outside, airs.back());
  }
  tools::FabricState nominal;
  nominal.materials.assign(field.materials().size(), 0.0);
  nominal.zones.assign(field.zones().size(), 0.0);
  nominal.extents.assign(field.zones().size(), tools::ZoneExtent::as_drawn);
  const cases::Household household;
  std::mt19937 random(number + 977U);
  std::normal_distribution<double> normal;
  for (const double humidity : {0.50, 0.60, 0.70}) {
    variant.spaces[room].humidity = humidity;
    const tools::Chance chance =
        tools::chance_of(field, fabric, household,
                         {&variant.criteria.front(), 0,
                          field.coldest(field.shares(nominal), 0, airs), outside, nullptr});
    const double in = inside + household.inside / 2 * normal(random);
    const double out = outside + household.outside / 2 * normal(random);
    const double surface = out + made.surface_factor * (in - out);
    const double pressure =
        std::clamp(humidity + household.humidity / 2 * normal(random), 0.01, 1.0) *
        materials::saturation_pressure(in);
    const double margin =
        materials::margin(variant.criteria.front().test, {surface, made.surface_factor, pressure});
    all.emplace_back(chance.broken, margin < 0.0);
  }
  return all;
}

}  // namespace

Outcome outcome_of(const Recipe& recipe, std::uint32_t number) {
  const MadeSurvey made = made_survey(recipe, number);
  const std::vector<tools::HouseSection> house{{"", &made.source.variants.front()}};
  const tools::WorkedSurvey worked =
      tools::worked_survey(house, made.survey, solver::LinearOptions{});
  const auto& explanations = worked.findings.explanations;
  Outcome outcome;
  double odds = 0.0;
  for (const tools::Explained& one : explanations) odds += std::exp(one.log_odds);
  for (std::size_t e = 0; e < explanations.size(); ++e) {
    const tools::Explained& one = explanations[e];
    const bool right = same(one.what, made.truth);
    outcome.chances.emplace_back(std::exp(one.log_odds) / odds, right);
    if (!right) continue;
    outcome.best_right = e == 0;
    outcome.put_aside = one.log_odds < -put_aside_at;
    outcome.effective = one.effective;
    outcome.ratio = held(one, "ratio", made.ratio);
    outcome.conductivity = held(one, "conductivity", made.conductivity);
    outcome.factor = held(one, "fRsi_design_corner", made.surface_factor);
    if (outcome.ratio)
      outcome.ratio->rank = rank_of(worked, worked.inferred[e], tools::UnknownKind::ratio,
                                    made.survey.zones.front().name, made.ratio);
    if (outcome.conductivity)
      outcome.conductivity->rank =
          rank_of(worked, worked.inferred[e], tools::UnknownKind::conductivity,
                  made.survey.zones.front().of, made.conductivity);
  }
  outcome.broken = broken_of(made, worked, number);
  outcome.named = worked.findings.named;
  outcome.named_right = outcome.named && outcome.best_right;
  return outcome;
}

void Coverage::add(const Outcome& outcome) {
  ++surveys;
  told += outcome.ratio ? 1 : 0;
  ratio += outcome.ratio && outcome.ratio->holds ? 1 : 0;
  conductivity_told += outcome.conductivity ? 1 : 0;
  conductivity += outcome.conductivity && outcome.conductivity->holds ? 1 : 0;
  factor_told += outcome.factor ? 1 : 0;
  factor += outcome.factor && outcome.factor->holds ? 1 : 0;
  best_right += outcome.best_right ? 1 : 0;
  put_aside += outcome.put_aside ? 1 : 0;
  named += outcome.named ? 1 : 0;
  named_right += outcome.named_right ? 1 : 0;
}

Coverage& operator+=(Coverage& all, const Coverage& some) {
  all.surveys += some.surveys;
  all.told += some.told;
  all.ratio += some.ratio;
  all.conductivity_told += some.conductivity_told;
  all.conductivity += some.conductivity;
  all.factor_told += some.factor_told;
  all.factor += some.factor;
  all.best_right += some.best_right;
  all.put_aside += some.put_aside;
  all.named += some.named;
  all.named_right += some.named_right;
  return all;
}

Coverage coverage_of(const Recipe& recipe, std::size_t surveys, std::uint32_t first) {
  Coverage coverage;
  for (std::size_t s = 0; s < surveys; ++s)
    coverage.add(outcome_of(recipe, first + static_cast<std::uint32_t>(s)));
  return coverage;
}

double share(std::size_t part, std::size_t whole) {
  return whole == 0 ? 0.0 : static_cast<double>(part) / static_cast<double>(whole);
}

}  // namespace quoin::testing
