// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/survey_model.hpp"

#include <algorithm>
#include <cmath>

#include "solver/survey/quasi_random.hpp"
#include "tools/answer/survey/placed_readings.hpp"
#include "tools/answer/survey/survey_unknowns.hpp"
#include "tools/answer/survey/unknowns.hpp"

namespace quoin::tools {
namespace {

constexpr double reach = 2.5;  ///< of the box of training, sd
constexpr std::size_t first_training = 32;
constexpr std::size_t most_training = 128;
constexpr std::size_t checks = 4;
constexpr double cells_per_metre = 12.0;

/// From the least to the most of an unknown under any explanation.
struct Reach {
  double low = 0.0;
  double high = 0.0;
};

std::vector<Reach> reaches(const SurveyModel& model) {
  std::vector<Reach> all;
  for (const SurveyUnknown& unknown : model.unknowns) {
    std::vector<solver::Unknown> possible{unknown.before};
    if (unknown.kind == UnknownKind::ratio) {
      possible.push_back(before::conducts_better);
      possible.push_back(before::conducts_less);
    }
    if (unknown.kind == UnknownKind::cover) possible.push_back(before::covered);
    Reach reached{1e9, -1e9};
    for (const solver::Unknown& one : possible) {
      reached.low = std::min(reached.low, one.median - reach * one.sd);
      reached.high = std::max(reached.high, one.median + reach * one.sd);
    }
    all.push_back(reached);
  }
  return all;
}

/// Whether an unknown moves a field, and not only what is read of it.
bool moves_field(UnknownKind kind) { return kind <= UnknownKind::stated_surface; }

/// Settings of a section spread over all that may be, with every extent of the zones.
std::vector<solver::Setting> spread_settings(const SurveyModel& model, std::size_t section,
                                             std::size_t count) {
  const std::vector<Reach> reached = reaches(model);
  std::vector<std::size_t> moving;
  for (std::size_t u = 0; u < reached.size(); ++u) {
    if (moves_field(model.unknowns[u].kind)) moving.push_back(u);
  }
  const std::vector<double> points = solver::even_points(count, moving.size());
  const std::size_t zones = model.survey->zones.size();
  std::vector<solver::Setting> settings;
  for (std::size_t p = 0; p < count; ++p) {
    std::vector<double> at(model.unknowns.size(), 0.0);
    for (std::size_t m = 0; m < moving.size(); ++m) {
      const Reach& one = reached[moving[m]];
      at[moving[m]] = one.low + points[p * moving.size() + m] * (one.high - one.low);
    }
    std::vector<ZoneExtent> extents;
    std::size_t turn = p;
    for (std::size_t z = 0; z < zones; ++z, turn /= 3)
      extents.push_back(static_cast<ZoneExtent>(turn % 3));
    settings.push_back(
        solver::setting_at({model.base[section], growth_of(model, section, extents)}, at));
  }
  return settings;
}

double widest_difference(const SurveyedSection& section) {
  double low = 1e9, high = -1e9;
  for (const cases::SpaceId air : section.airs) {
    low = std::min(low, section.variant->spaces[air].temperature);
    high = std::max(high, section.variant->spaces[air].temperature);
  }
  return high - low;
}

/// Solves a section for as many settings as are asked of it. The error found at others, K.
double reduce(SurveyModel& model, std::size_t s, const solver::LinearOptions& options) {
  const SurveyedSection& section = model.sections[s];
  std::vector<solver::Setting> settings = spread_settings(model, s, model.training[s] + checks);
  const std::vector<solver::Setting> tried(settings.end() - checks, settings.end());
  settings.resize(model.training[s]);
  model.fields[s] = std::make_unique<solver::ReducedField>(section.parametrised, settings,
                                                           model.watched[s], options);
  model.solves += model.fields[s]->solves();
  return widest_difference(section) * solver::reduction_error(section.parametrised,
                                                              *model.fields[s], tried,
                                                              model.watched[s], options);
}

/// Solves a section, for more settings until its error is as wanted.
void reduce_well(SurveyModel& model, std::size_t s, const solver::LinearOptions& options) {
  double error = reduce(model, s, options);
  while (error > wanted_basis_error && 2 * model.training[s] <= most_training) {
    model.training[s] *= 2;
    error = reduce(model, s, options);
  }
  model.basis_error = std::max(model.basis_error, error);
}

}  // namespace

std::optional<std::size_t> SurveyModel::find(UnknownKind kind, const std::string& of) const {
  for (std::size_t u = 0; u < unknowns.size(); ++u) {
    if (unknowns[u].kind == kind && unknowns[u].of == of) return u;
  }
  return std::nullopt;
}

SurveyModel survey_model(const std::vector<HouseSection>& house, const cases::Survey& survey,
                         const solver::LinearOptions& options) {
  SurveyModel model;
  model.survey = &survey;
  for (const HouseSection& one : house) {
    model.sections.push_back(surveyed_section(one.name, *one.variant, survey, cells_per_metre));
  }
  place_readings(model);
  list_unknowns(model);
  model.training.assign(model.sections.size(), first_training);
  model.fields.resize(model.sections.size());
  for (std::size_t s = 0; s < model.sections.size(); ++s) reduce_well(model, s, options);
  place_beside(model);
  return model;
}

bool solve_more(SurveyModel& model, const solver::LinearOptions& options) {
  bool more = false;
  for (std::size_t s = 0; s < model.sections.size(); ++s) {
    if (2 * model.training[s] > most_training) continue;
    model.training[s] *= 2;
    reduce_well(model, s, options);
    more = true;
  }
  return more;
}

double error_at(const SurveyModel& model, std::size_t section,
                const std::vector<solver::Setting>& settings,
                const solver::LinearOptions& options) {
  return widest_difference(model.sections[section]) *
         solver::reduction_error(model.sections[section].parametrised, *model.fields[section],
                                 settings, model.watched[section], options);
}

Hypothesis as_drawn(const SurveyModel& model) {
  Hypothesis hypothesis;
  for (const SurveyUnknown& unknown : model.unknowns) hypothesis.before.push_back(unknown.before);
  hypothesis.extents.assign(model.survey->zones.size(), ZoneExtent::as_drawn);
  return hypothesis;
}

Hypothesis hypothesis_of(const SurveyModel& model, const cases::Explanation& explanation,
                         ZoneExtent extent) {
  using cases::ExplanationKind;
  Hypothesis hypothesis = as_drawn(model);
  const auto change = [&](UnknownKind kind, const std::string& of, const solver::Unknown& unknown) {
    if (const auto u = model.find(kind, of)) hypothesis.before[*u] = unknown;
  };
  const auto change_zone = [&](const solver::Unknown& unknown) {
    change(UnknownKind::ratio, explanation.of, unknown);
    for (std::size_t z = 0; z < model.survey->zones.size(); ++z) {
      if (model.survey->zones[z].name == explanation.of) hypothesis.extents[z] = extent;
    }
  };
  const auto change_cover = [&](const std::string& of) {
    solver::Unknown covered = before::covered;
    for (const cases::Stretch& stretch : model.survey->stretches) {
      if (stretch.name == of && stretch.behind)
        covered = {
            std::log(materials::resistance_behind(*stretch.behind) / before::inside_resistance),
            before::behind_spread};
    }
    change(UnknownKind::cover, of, covered);
  };
  switch (explanation.kind) {
    case ExplanationKind::as_drawn:
      break;
    case ExplanationKind::conducts_better:
      change_zone(before::conducts_better);
      break;
    case ExplanationKind::conducts_less:
      change_zone(before::conducts_less);
      break;
    case ExplanationKind::covered:
      change_cover(explanation.of);
      break;
    case ExplanationKind::better_and_covered:
      change_zone(before::conducts_better);
      change_cover(explanation.also);
      break;
    case ExplanationKind::thermometer_off:
      change(UnknownKind::offset, explanation.of, before::thermometer_off);
      break;
    case ExplanationKind::colder_outside:
      change(UnknownKind::air_felt, explanation.of, before::colder_outside);
      break;
  }
  return hypothesis;
}

bool has_extents(const SurveyModel& model, const cases::Explanation& explanation) {
  for (std::size_t z = 0; z < model.survey->zones.size(); ++z) {
    if (model.survey->zones[z].name != explanation.of) continue;
    return std::any_of(
        model.sections.begin(), model.sections.end(),
        [&](const SurveyedSection& section) { return bool(section.zoned.varies[z]); });
  }
  return false;
}

std::vector<solver::Growth> growth_of(const SurveyModel& model, std::size_t section,
                                      const std::vector<ZoneExtent>& extents) {
  const SurveyedSection& one = model.sections[section];
  const std::vector<cases::Zone>& zones = model.survey->zones;
  std::vector<solver::Growth> growth;
  for (std::size_t r = 0; r < one.zoned.regions.size(); ++r) {
    const ZonedRegion& region = one.zoned.regions[r];
    const std::string& name = one.variant->regions[region.region].name;
    if (const auto u = model.find(UnknownKind::conductivity, name)) growth.push_back({r, *u, 1.0});
    for (std::size_t z = 0; z < zones.size(); ++z) {
      if (!region.within(z, extents[z])) continue;
      if (const auto u = model.find(UnknownKind::ratio, zones[z].name))
        growth.push_back({r, *u, 1.0});
    }
  }
  for (std::size_t g = 0; g < one.kinds.size(); ++g) {
    const std::size_t parameter = one.zoned.regions.size() + g;
    for (const auto& [kind, of] : surface_unknowns(model, one, one.kinds[g])) {
      if (const auto u = model.find(kind, of)) growth.push_back({parameter, *u, -1.0});
    }
  }
  return growth;
}

const cases::SurveyedAir* surveyed_air(const cases::Survey& survey, const std::string& space) {
  for (const cases::SurveyedAir& air : survey.airs) {
    if (air.space == space) return &air;
  }
  return nullptr;
}

}  // namespace quoin::tools
