// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/fabric_after.hpp"

#include <algorithm>
#include <cmath>

#include "geometry/section.hpp"
#include "solver/survey/quasi_random.hpp"
#include "solver/survey/shuffled.hpp"
#include "tools/answer/survey/design_factor.hpp"
#include "tools/answer/survey/unknowns.hpp"

namespace quoin::tools {
namespace {

constexpr double everywhere = 1e3;           // m
constexpr double within_odds = 2.302585093;  ///< explanations ten times worse than the best are out

/// The box around a material of a variant.
cases::SurveyBox bounds_of(const cases::Variant& variant, const std::string& material) {
  cases::SurveyBox box{everywhere, -everywhere, everywhere, -everywhere};
  const geometry::Section section = geometry::section_of(variant.sheet);
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      for (const geometry::Fill* fill : {&section.cell(i, j).below, &section.cell(i, j).above}) {
        const auto* region = std::get_if<cases::RegionId>(fill);
        if (region == nullptr || variant.regions[*region].name != material) continue;
        box = {std::min(box.x_from, section.x[i]), std::max(box.x_to, section.x[i + 1]),
               std::min(box.y_from, section.y[j]), std::max(box.y_to, section.y[j + 1])};
      }
    }
  }
  return box;
}

double moisture_of(const cases::Variant& variant, const std::string& material) {
  double most = 0.0;
  for (const cases::Region& region : variant.regions) {
    if (region.name == material) most = std::max(most, region.moisture);
  }
  return most;
}

/// Whether each zone has dried, or been wetted, since it was read.
std::vector<bool> changed_zones(const SurveyModel& model, const std::string& section,
                                const cases::Variant& variant) {
  std::vector<bool> changed;
  for (const cases::Zone& zone : model.survey->zones) {
    bool differs = false;
    for (const SurveyedSection& read : model.sections) {
      if (read.name == section && zone.section == section)
        differs = moisture_of(*read.variant, zone.of) != moisture_of(variant, zone.of);
    }
    changed.push_back(differs);
  }
  return changed;
}

}  // namespace

cases::Survey carried_over(const SurveyModel& model) {
  constexpr double end = 0.001;  // m
  cases::Survey survey = *model.survey;
  for (cases::Zone& zone : survey.zones) {
    for (const SurveyedSection& section : model.sections) {
      if (section.name != zone.section) continue;
      const cases::SurveyBox whole = bounds_of(*section.variant, zone.of);
      if (zone.box.x_from <= whole.x_from + end) zone.box.x_from = -everywhere;
      if (zone.box.x_to >= whole.x_to - end) zone.box.x_to = everywhere;
      if (zone.box.y_from <= whole.y_from + end) zone.box.y_from = -everywhere;
      if (zone.box.y_to >= whole.y_to - end) zone.box.y_to = everywhere;
    }
  }
  survey.stretches.clear();
  survey.readings.clear();
  return survey;
}

FabricDraws fabric_after(const WorkedSurvey& worked, const SurfaceField& field,
                         const std::string& section, std::size_t draws) {
  const SurveyModel& model = worked.model;
  const std::vector<bool> changed = changed_zones(model, section, *field.section().variant);
  const double best = worked.inferred.front().log_evidence;
  double odds = 0.0;
  for (const InferredExplanation& one : worked.inferred) {
    if (best - one.log_evidence < within_odds) odds += std::exp(one.log_evidence - best);
  }
  const std::size_t materials = field.materials().size(), zones = changed.size();
  const std::vector<double> anew = solver::even_normals(draws, materials + zones);
  const std::vector<std::size_t> order = solver::shuffled(draws);
  FabricDraws fabric;
  fabric.from_readings = true;
  for (std::size_t z = 0; z < zones; ++z) {
    if (changed[z]) fabric.assumed_dry.push_back(model.survey->zones[z].name);
  }
  double effective = 0.0;
  for (const InferredExplanation& one : worked.inferred) {
    if (best - one.log_evidence >= within_odds) continue;
    const double share = std::exp(one.log_evidence - best) / odds;
    effective += share * one.effective;
    const auto count = static_cast<std::size_t>(std::lround(share * static_cast<double>(draws)));
    for (const Drawn& drawn : resampled(one, count)) {
      FabricState state = fabric_of(model, field, drawn.from->hypothesis, drawn.unknowns);
      const double* normal =
          anew.data() + order[fabric.states.size() % draws] * (materials + zones);
      for (std::size_t m = 0; m < materials; ++m) {
        if (!model.find(UnknownKind::conductivity, field.materials()[m].name))
          state.materials[m] = field.materials()[m].sd * normal[m];
      }
      for (std::size_t z = 0; z < zones; ++z) {
        if (!changed[z]) continue;
        state.zones[z] = before::ratio_as_drawn.sd * normal[materials + z];
        state.extents[z] = ZoneExtent::as_drawn;
      }
      fabric.states.push_back(std::move(state));
    }
  }
  fabric.effective = std::min(effective, static_cast<double>(fabric.states.size()));
  return fabric;
}

}  // namespace quoin::tools
