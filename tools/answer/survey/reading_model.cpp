// SPDX-License-Identifier: Apache-2.0
#include <algorithm>
#include <cmath>
#include <iterator>
#include <map>
#include <numeric>

#include "solver/survey/wall_response.hpp"
#include "tools/answer/survey/survey_model.hpp"
#include "tools/answer/survey/unknowns.hpp"

namespace quoin::tools {
namespace {

/// Of dry mineral material, J/(kg K), and of water by volume, J/(m3 K). Common practice, no source.
constexpr double heat_of_solids = 850.0;
constexpr double heat_of_water = 4.18e6;
constexpr double hour = 3600.0;  // s
constexpr double least_resistance = 0.01;

/// The wall behind a reading from the place on, as it stores heat at some unknowns.
std::optional<solver::StoringWall> storing_wall(const SurveyModel& model,
                                                const SurveyedReading& reading,
                                                const std::vector<ZoneExtent>& extents,
                                                const std::vector<double>& unknowns) {
  if (!reading.behind.opposite.valid() || reading.behind.pieces.empty()) return std::nullopt;
  const SurveyedSection& section = model.sections[reading.section];
  const solver::Setting setting = solver::setting_at(
      {model.base[reading.section], growth_of(model, reading.section, extents)}, unknowns);
  solver::StoringWall wall;
  for (const WallBehind::Piece& piece : reading.behind.pieces) {
    const cases::Region& region =
        section.variant->regions[section.zoned.regions[piece.region].region];
    wall.layers.push_back(
        {piece.thickness, setting.conductivity[piece.region],
         region.material.density.value * heat_of_solids + region.moisture * heat_of_water});
  }
  wall.inside_resistance = std::max(least_resistance, 1.0 / setting.conductance[reading.group]);
  double opposite = before::outside_resistance;
  for (std::size_t g = 0; g < section.kinds.size(); ++g) {
    if (section.kinds[g].space == reading.behind.opposite) opposite = 1.0 / setting.conductance[g];
  }
  wall.outside_resistance = std::max(least_resistance, opposite);
  return wall;
}

/// What hourly temperatures, the present one first, come to with the weights of a wall; those
/// further back than known are taken as the mean of the known ones.
double weighed(const std::vector<double>& hourly, const std::vector<double>& weights) {
  const double mean =
      std::accumulate(hourly.begin(), hourly.end(), 0.0) / static_cast<double>(hourly.size());
  double sum = mean;
  for (std::size_t k = 0; k < hourly.size(); ++k) sum += weights[k] * (hourly[k] - mean);
  return sum;
}

/// A wall as numbers, with how far back it is looked at.
std::vector<double> key_of(const solver::StoringWall& wall, std::size_t hours) {
  std::vector<double> key{wall.inside_resistance, wall.outside_resistance,
                          static_cast<double>(hours)};
  for (const solver::StoringLayer& layer : wall.layers)
    key.insert(key.end(), {layer.thickness, layer.conductivity, layer.heat_capacity});
  return key;
}

/// Shares of the whole response to an air.
std::vector<double> weights_of(const solver::StoringWall& wall, solver::WallFace air,
                               std::size_t hours) {
  const solver::WallResponse response(wall, solver::WallFace::inside, air);
  std::vector<double> weights = response.hourly_weights(hours);
  for (double& weight : weights) weight /= response.steady();
  return weights;
}

std::vector<ZoneExtent> drawn_extents(const SurveyModel& model) {
  return std::vector<ZoneExtent>(model.survey->zones.size(), ZoneExtent::as_drawn);
}

}  // namespace

std::optional<double> lag_of(const SurveyModel& model, const SurveyedReading& reading,
                             const std::vector<double>& unknowns) {
  const auto wall = storing_wall(model, reading, drawn_extents(model), unknowns);
  if (!wall) return std::nullopt;
  return solver::WallResponse(*wall, solver::WallFace::inside, solver::WallFace::outside)
             .mean_lag() /
         hour;
}

double FeltAirs::at(const SurveyModel& model, const SurveyedReading& reading, std::size_t air,
                    const Hypothesis& hypothesis, const std::vector<double>& unknowns) {
  const SurveyedSection& section = model.sections[reading.section];
  const cases::SpaceId id = section.airs[air];
  const cases::Space& space = section.variant->spaces[id];
  const cases::SurveyedAir* said = surveyed_air(*model.survey, space.name);
  const double stated = space.temperature - space.cooling;
  if (said == nullptr) return stated;
  const bool outdoors = space.is == cases::SpaceKind::outside;
  if (!said->history)
    return said->day_mean && outdoors && reading.is_inside ? *said->day_mean - space.cooling
                                                           : stated;
  const std::vector<double>& hourly = said->history->hourly;
  const auto wall = reading.on_surface ? storing_wall(model, reading, hypothesis.extents, unknowns)
                                       : std::nullopt;
  const bool own = reading.on_surface && section.variant->spaces[reading.space].air == id;
  const bool across = wall && section.variant->spaces[reading.behind.opposite].air == id;
  if (!wall || (!own && !across)) {
    // No plain wall to go by: the mean of the past day.
    const std::size_t hours = std::min<std::size_t>(hourly.size(), 25);
    return std::accumulate(hourly.begin(), hourly.begin() + std::ptrdiff_t(hours), 0.0) /
               static_cast<double>(hours) -
           space.cooling;
  }
  // The wall begins at the place: its first face is read.
  const solver::WallFace face = own ? solver::WallFace::inside : solver::WallFace::outside;
  const auto [known, is_new] = weights_.try_emplace({key_of(*wall, hourly.size()), own ? 0 : 1});
  if (is_new) known->second = weights_of(*wall, face, hourly.size() - 1);
  return weighed(hourly, known->second) - space.cooling;
}

solver::ReadingModel reading_model(const SurveyModel& model, const Hypothesis& hypothesis,
                                   const std::vector<double>& unknowns, FeltAirs& felt_airs) {
  std::vector<SurveyedReading> counted;
  std::copy_if(model.readings.begin(), model.readings.end(), std::back_inserter(counted),
               [](const SurveyedReading& reading) { return reading.left_out.empty(); });
  return reading_model(model, counted, hypothesis, unknowns, felt_airs);
}

solver::ReadingModel reading_model(const SurveyModel& model,
                                   const std::vector<SurveyedReading>& places,
                                   const Hypothesis& hypothesis,
                                   const std::vector<double>& unknowns, FeltAirs& felt_airs) {
  solver::ReadingModel result;
  result.unknowns = hypothesis.before;
  for (std::size_t s = 0; s < model.sections.size(); ++s) {
    result.fields.push_back(model.fields[s].get());
    result.airs.push_back(model.sections[s].airs.size());
    result.watched.push_back(model.watched[s].size());
    result.sections.push_back({model.base[s], growth_of(model, s, hypothesis.extents)});
  }
  for (const SurveyedReading& reading : places) {
    const SurveyedSection& section = model.sections[reading.section];
    solver::ReadSpot spot;
    spot.section = reading.section;
    spot.watched = reading.watched;
    for (std::size_t a = 0; a < section.airs.size(); ++a) {
      spot.air.push_back(felt_airs.at(model, reading, a, hypothesis, unknowns));
      const std::string& name = section.variant->spaces[section.airs[a]].name;
      const auto felt = model.find(UnknownKind::air_felt, name);
      spot.air_error.push_back(felt && reading.is_inside ? felt
                                                         : model.find(UnknownKind::air_now, name));
    }
    if (reading.pad != nullptr) {
      spot.pad =
          solver::ReadPad{reading.pad->resistance, model.find(UnknownKind::pad, reading.pad->name),
                          reading.group, section.air_number(reading.space)};
    } else {
      const cases::Instrument& one = *reading.instrument;
      spot.offset = model.find(UnknownKind::offset, one.name);
      if (one.infrared) {
        const double room =
            reading.on_surface ? section.variant->spaces[reading.space].temperature : reading.read;
        spot.radiation = solver::ReadByRadiation{one.reflected.value_or(room),
                                                 1.0 - one.emissivity / one.emissivity_set,
                                                 *model.find(UnknownKind::emissivity, one.name)};
      }
    }
    result.spots.push_back(std::move(spot));
  }
  solver::activate(result);
  return result;
}

solver::Inference inference_of(const SurveyModel& model, const solver::ReadingModel& readings) {
  solver::Inference inference;
  inference.unknowns = readings.active.size();
  for (const SurveyedReading& reading : model.readings) {
    if (!reading.left_out.empty()) continue;
    inference.read.push_back(reading.read);
    inference.scale.push_back(std::hypot(reading.deviation, reading.joints));
  }
  inference.model = [&readings](std::span<const double> at, std::span<double> predicted,
                                solver::Table* slopes) { readings.predict(at, predicted, slopes); };
  return inference;
}

}  // namespace quoin::tools
