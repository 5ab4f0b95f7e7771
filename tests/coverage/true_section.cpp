// SPDX-License-Identifier: Apache-2.0
#include "tests/coverage/true_section.hpp"

#include <algorithm>
#include <cmath>

#include "materials/part.hpp"
#include "tests/coverage/march.hpp"
#include "tools/answer/survey/placed_readings.hpp"
#include "tools/answer/survey/survey_unknowns.hpp"
#include "tools/answer/survey/unknowns.hpp"

namespace quoin::testing {
namespace {

using tools::SurveyedReading;
using tools::SurveyedSection;
using tools::UnknownKind;

constexpr double cells_per_metre = 24.0;  // twice as fine as the inference
constexpr double heat_of_solids = 850.0, heat_of_water = 4.18e6;

double normal(std::mt19937& random) { return std::normal_distribution<double>()(random); }

/// The value of an unknown `z` sd from its median, or where it truly is otherwise.
double true_value(const tools::SurveyUnknown& unknown, const solver::Unknown& known, double z,
                  Wrong wrong) {
  const double sign = z < 0 ? -1.0 : 1.0;
  if (wrong == Wrong::thermometer && unknown.kind == UnknownKind::offset) return sign;
  if (wrong == Wrong::afternoon && unknown.kind == UnknownKind::air_felt) return -3.0;
  if (wrong == Wrong::resistance && unknown.kind == UnknownKind::surface)
    return known.median + 2.0 * sign * known.sd;
  return known.median + z * known.sd;
}

/// Half of what the zone differs by where it goes on beyond its middle.
void grade(const SurveyedSection& section, std::size_t ratio, std::vector<solver::Growth>& growth) {
  for (solver::Growth& one : growth) {
    if (one.unknown == ratio && one.parameter < section.zoned.regions.size() &&
        section.zoned.regions[one.parameter].depth[0] < 3)
      one.power = 0.5;
  }
}

/// What the sensor of a reading covers, up to a centimetre beside where it is said to be.
solver::Watched covered(const SurveyedSection& section, const SurveyedReading& reading,
                        std::mt19937& random) {
  tools::OnSurface place = *tools::nearest_on_surface(section, reading.place);
  const geometry::Surface& surface = section.surfaces[place.surface];
  place.along = std::clamp(place.along + tools::before::placing / 2 * normal(random),
                           surface.along.front(), surface.along.back());
  const double width = reading.pad != nullptr ? 0.001 : std::max(0.001, reading.instrument->spot);
  return tools::mean_about(section, place, width);
}

std::vector<double> heat_capacities(const SurveyedSection& section, std::mt19937& random) {
  const double factor = std::exp(0.15 * normal(random));
  std::vector<double> all;
  for (const tools::ZonedRegion& zoned : section.zoned.regions) {
    const cases::Region& region = section.variant->regions[zoned.region];
    all.push_back(factor * (region.material.density.value * heat_of_solids +
                            region.moisture * heat_of_water));
  }
  return all;
}

double value_of(const TrueSection& section, UnknownKind kind, const std::string& of) {
  const auto u = section.model.find(kind, of);
  return u ? section.unknowns[*u] : 0.0;
}

/// What an air was to the wall of a reading where nothing changes in time.
double felt(const TrueSection& section, const SurveyedReading& reading, std::size_t air) {
  const cases::Space& space =
      section.model.sections[0].variant->spaces[section.model.sections[0].airs[air]];
  const bool apart = reading.is_inside && section.model.find(UnknownKind::air_felt, space.name);
  return space.temperature +
         value_of(section, apart ? UnknownKind::air_felt : UnknownKind::air_now, space.name);
}

/// The difference across a pad before a plane wall.
double across_pad(const TrueSection& section, const SurveyedReading& reading, double bare,
                  double share_of_room) {
  const SurveyedSection& drawn = section.model.sections[0];
  const double film = 1.0 / section.setting.conductance[reading.group];
  const double pad =
      reading.pad->resistance * std::exp(value_of(section, UnknownKind::pad, reading.pad->name));
  const double room = felt(section, reading, drawn.air_number(reading.space));
  const double whole = film / (1.0 - share_of_room);  // of the wall from air to air
  return pad * (room - bare) / film * whole / (whole + pad);
}

}  // namespace

TrueSection true_section(const cases::Variant& variant, const cases::Survey& survey,
                         const Recipe& recipe, const cases::Explanation& truth,
                         const std::vector<double>& spread) {
  TrueSection result;
  tools::SurveyModel& model = result.model;
  model.survey = &survey;
  model.sections.push_back(tools::surveyed_section("", variant, survey, cells_per_metre));
  tools::place_readings(model);
  tools::list_unknowns(model);
  result.hypothesis = tools::hypothesis_of(model, truth, tools::ZoneExtent::as_drawn);
  for (std::size_t u = 0; u < model.unknowns.size(); ++u)
    result.unknowns.push_back(
        true_value(model.unknowns[u], result.hypothesis.before[u], spread[u], recipe.wrong));
  std::vector<solver::Growth> growth = tools::growth_of(model, 0, result.hypothesis.extents);
  if (recipe.wrong == Wrong::graded)
    grade(model.sections[0], *model.find(UnknownKind::ratio, survey.zones[0].name), growth);
  result.setting = solver::setting_at({model.base[0], growth}, result.unknowns);
  return result;
}

std::vector<double> true_readings(const TrueSection& section, const Recipe& recipe,
                                  const std::vector<std::vector<double>>& hourly,
                                  std::mt19937& random) {
  const SurveyedSection& drawn = section.model.sections[0];
  const std::size_t airs = drawn.airs.size();
  std::vector<solver::Watched> watched;
  for (const SurveyedReading& reading : section.model.readings)
    watched.push_back(covered(drawn, reading, random));
  std::vector<double> field;
  if (!hourly.empty())
    field = marched(drawn.parametrised, section.setting, heat_capacities(drawn, random), hourly);
  const std::vector<double> shares =
      solver::full_shares(drawn.parametrised, section.setting, watched, {});
  std::vector<double> all;
  for (std::size_t r = 0; r < watched.size(); ++r) {
    const SurveyedReading& reading = section.model.readings[r];
    double value = 0.0;
    if (!field.empty()) {
      for (const auto& [node, weight] : watched[r]) value += weight * field[node];
    } else {
      for (std::size_t a = 0; a < airs; ++a)
        value += shares[r * airs + a] * felt(section, reading, a);
    }
    if (recipe.wrong == Wrong::evaporation && reading.to_zone[0] == 0.0) value -= 1.5;
    if (reading.pad != nullptr) {
      value =
          across_pad(section, reading, value, shares[r * airs + drawn.air_number(reading.space)]);
    } else {
      const cases::Instrument& one = *reading.instrument;
      if (one.infrared) {
        const double reflects = 1.0 - one.emissivity / one.emissivity_set +
                                value_of(section, UnknownKind::emissivity, one.name);
        value += reflects * (*one.reflected - value);
      }
      value += value_of(section, UnknownKind::offset, one.name);
    }
    all.push_back(value);
  }
  return all;
}

double true_factor(const TrueSection& section) {
  const SurveyedSection& drawn = section.model.sections[0];
  solver::Setting design = section.setting;
  for (std::size_t g = 0; g < drawn.kinds.size(); ++g)
    design.conductance[g] = 1.0 / std::max(1e-6, drawn.kinds[g].design);
  std::vector<solver::Watched> watched;
  cases::SpaceId room;
  for (const geometry::Face& face : drawn.parametrised.faces) {
    const cases::RegionId region = drawn.zoned.regions[face.region.index].region;
    if (drawn.variant->spaces[face.space].is != cases::SpaceKind::inside ||
        !materials::is_fabric(drawn.variant->regions[region].part))
      continue;
    room = face.space;
    watched.push_back({{face.from, 1.0}});
    watched.push_back({{face.to, 1.0}});
  }
  const std::vector<double> shares = solver::full_shares(drawn.parametrised, design, watched, {});
  double least = 1.0;
  for (std::size_t w = 0; w < watched.size(); ++w)
    least = std::min(least, shares[w * drawn.airs.size() + drawn.air_number(room)]);
  return least;
}

}  // namespace quoin::testing
