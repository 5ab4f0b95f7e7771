// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/design_factor.hpp"

#include <algorithm>
#include <cmath>

#include "solver/survey/quasi_random.hpp"
#include "tools/answer/ask/physics.hpp"

namespace quoin::tools {
namespace {

constexpr std::size_t design_draws = 512, prior_draws = 256;

/// Airs of a section at 1 inside a room and at 0 outside; others by their stated temperature.
std::vector<double> unit_airs(const SurveyedSection& section, cases::SpaceId room) {
  const cases::Variant& variant = *section.variant;
  const double inside = variant.spaces[room].temperature;
  const double outside = variant.spaces[outside_of(variant)].temperature;
  std::vector<double> air;
  for (const cases::SpaceId id : section.airs)
    air.push_back((variant.spaces[id].temperature - outside) / (inside - outside));
  return air;
}

}  // namespace

FabricState fabric_of(const SurveyModel& model, const SurfaceField& field,
                      const Hypothesis& hypothesis, std::span<const double> unknowns) {
  FabricState fabric;
  for (const UncertainMaterial& material : field.materials()) {
    const auto u = model.find(UnknownKind::conductivity, material.name);
    fabric.materials.push_back(u ? unknowns[*u] : 0.0);
  }
  for (const cases::Zone& zone : model.survey->zones) {
    const auto u = model.find(UnknownKind::ratio, zone.name);
    fabric.zones.push_back(u ? unknowns[*u] : 0.0);
  }
  fabric.extents = hypothesis.extents;
  return fabric;
}

DesignFactors::DesignFactors(const SurveyModel& model, const solver::LinearOptions& options) {
  for (const SurveyedSection& section : model.sections)
    fields_.push_back(
        std::make_unique<SurfaceField>(section.name, *section.variant, *model.survey, options));
}

std::size_t DesignFactors::solves() const {
  std::size_t sum = 0;
  for (const auto& field : fields_) sum += field->solves();
  return sum;
}

Spread DesignFactors::known_before(const SurveyModel& model, const Hypothesis& hypothesis,
                                   std::size_t section, std::size_t room) {
  const SurfaceField& field = *fields_[section];
  std::vector<double> key{static_cast<double>(section), static_cast<double>(room)};
  for (std::size_t u = 0; u < model.unknowns.size(); ++u) {
    const UnknownKind kind = model.unknowns[u].kind;
    if (kind != UnknownKind::conductivity && kind != UnknownKind::ratio) continue;
    key.insert(key.end(), {hypothesis.before[u].median, hypothesis.before[u].sd});
  }
  for (const ZoneExtent extent : hypothesis.extents) key.push_back(static_cast<double>(extent));
  const auto [known, is_new] = before_.try_emplace(key);
  if (!is_new) return known->second;
  const std::vector<double> air = unit_airs(field.section(), field.rooms()[room]);
  const std::vector<double> normals = solver::even_normals(prior_draws, model.unknowns.size());
  Weighted all;
  for (std::size_t k = 0; k < prior_draws; ++k) {
    std::vector<double> at;
    for (std::size_t u = 0; u < model.unknowns.size(); ++u)
      at.push_back(hypothesis.before[u].median +
                   hypothesis.before[u].sd * normals[k * model.unknowns.size() + u]);
    all.values.push_back(
        field.coldest(field.shares(fabric_of(model, field, hypothesis, at)), room, air));
  }
  all.weights.assign(prior_draws, 1.0 / static_cast<double>(prior_draws));
  known->second = spread_of(all);
  return known->second;
}

std::vector<Learned> DesignFactors::learned(const SurveyModel& model,
                                            const InferredExplanation& explanation) {
  const std::vector<Drawn> after = resampled(explanation, design_draws);
  const Hypothesis& hypothesis = explanation.each[explanation.each.size() / 2].hypothesis;
  std::vector<Learned> all;
  for (std::size_t s = 0; s < fields_.size(); ++s) {
    const SurfaceField& field = *fields_[s];
    std::vector<std::vector<double>> shares;
    for (const Drawn& one : after)
      shares.push_back(field.shares(fabric_of(model, field, one.from->hypothesis, one.unknowns)));
    for (std::size_t room = 0; room < field.rooms().size(); ++room) {
      const SurveyedSection& section = field.section();
      const std::vector<double> air = unit_airs(section, field.rooms()[room]);
      if (!std::isfinite(air.front())) continue;
      Weighted told;
      for (const std::vector<double>& one : shares)
        told.values.push_back(field.coldest(one, room, air));
      told.weights.assign(told.values.size(), 1.0 / static_cast<double>(told.values.size()));
      const Spread prior = known_before(model, hypothesis, s, room), posterior = spread_of(told);
      const std::string& name = section.variant->spaces[field.rooms()[room]].name;
      all.push_back({"fRsi_design_corner", section.name.empty() ? name : section.name + ": " + name,
                     "1", prior.low, prior.median, prior.high, posterior.low, posterior.median,
                     posterior.high,
                     prior.sd > 0.0 ? std::max(0.0, 1.0 - posterior.sd / prior.sd) : 0.0});
    }
  }
  return all;
}

}  // namespace quoin::tools
