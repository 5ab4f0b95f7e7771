// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/design_factor.hpp"

#include <algorithm>
#include <cmath>

#include "solver/survey/quasi_random.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/survey/explain.hpp"

namespace quoin::tools {
namespace {

constexpr std::size_t design_draws = 1024;

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

std::vector<Learned> DesignFactors::learned(const SurveyModel& model,
                                            const InferredExplanation& explanation) const {
  const std::vector<Drawn> after = resampled(explanation, design_draws);
  const Hypothesis& hypothesis = explanation.each[explanation.each.size() / 2].hypothesis;
  const std::vector<double> normals = solver::even_normals(design_draws, model.unknowns.size());
  std::vector<Learned> all;
  for (const auto& field : fields_) {
    for (std::size_t room = 0; room < field->rooms().size(); ++room) {
      const SurveyedSection& section = field->section();
      const std::vector<double> air = unit_airs(section, field->rooms()[room]);
      if (!std::isfinite(air.front())) continue;
      const auto factor = [&](const Hypothesis& of, std::span<const double> unknowns) {
        return field->coldest(field->shares(fabric_of(model, *field, of, unknowns)), room, air);
      };
      Weighted told, known;
      for (const Drawn& one : after)
        told.values.push_back(factor(one.from->hypothesis, one.unknowns));
      for (std::size_t k = 0; k < design_draws / 4; ++k) {
        std::vector<double> at;
        for (std::size_t u = 0; u < model.unknowns.size(); ++u)
          at.push_back(hypothesis.before[u].median +
                       hypothesis.before[u].sd * normals[k * model.unknowns.size() + u]);
        known.values.push_back(factor(hypothesis, at));
      }
      told.weights.assign(told.values.size(), 1.0 / static_cast<double>(told.values.size()));
      known.weights.assign(known.values.size(), 1.0 / static_cast<double>(known.values.size()));
      const Spread prior = spread_of(known), posterior = spread_of(told);
      const std::string& name = section.variant->spaces[field->rooms()[room]].name;
      all.push_back({"fRsi_design_corner", section.name.empty() ? name : section.name + ": " + name,
                     "1", prior.low, prior.median, prior.high, posterior.low, posterior.median,
                     posterior.high,
                     prior.sd > 0.0 ? std::max(0.0, 1.0 - posterior.sd / prior.sd) : 0.0});
    }
  }
  return all;
}

}  // namespace quoin::tools
