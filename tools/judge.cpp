// SPDX-License-Identifier: Apache-2.0
#include "tools/judge.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "materials/moist_air.hpp"
#include "tools/gate.hpp"
#include "tools/physics.hpp"

namespace quoin::tools {
namespace {

constexpr double mould_limit = 0.8;  // ISO 13788

/// A cold spot as criteria look at it; its temperature or its factor may be off by the band.
materials::Place place_of(const cases::Space& room, const solver::Spot& spot, double bands = 0.0) {
  return {spot.temperature.value + bands * spot.temperature.band,
          spot.factor.value + bands * spot.factor.band,
          room.humidity.value_or(0.0) * materials::saturation_pressure(room.temperature)};
}

}  // namespace

std::vector<AirHumidity> humidities(const SolvedVariant& solved) {
  std::vector<AirHumidity> result;
  const double outside = solved.variant.spaces[outside_of(solved.variant)].temperature;
  for (const solver::AirSurface& surface : solved.surface.airs) {
    const cases::Space& room = solved.variant.spaces[surface.air];
    if (!room.humidity) continue;
    const double spot = surface.coldest.temperature.value;
    AirHumidity air;
    air.air = surface.air;
    air.humidity = *room.humidity;
    air.dew_point = materials::dew_point(room.temperature, *room.humidity);
    air.mould_temperature =
        materials::lowest_safe_surface_temperature(room.temperature, *room.humidity, mould_limit);
    air.surface_humidity = materials::surface_humidity(room.temperature, *room.humidity, spot);
    air.margin_to_mould = spot - air.mould_temperature;
    air.margin_to_condensation = spot - air.dew_point;
    air.factor_needed =
        room.temperature == outside
            ? std::numeric_limits<double>::quiet_NaN()
            : materials::factor_needed(room.temperature, *room.humidity, outside, mould_limit);
    air.highest_safe_humidity =
        materials::highest_safe_humidity(room.temperature, spot, mould_limit);
    result.push_back(air);
  }
  return result;
}

const AirHumidity* humidity_of(const SolvedVariant& solved, SpaceId air) {
  for (const AirHumidity& humidity : solved.humidity) {
    if (humidity.air == air) return &humidity;
  }
  return nullptr;
}

std::vector<Verdict> verdicts(const SolvedVariant& solved) {
  std::vector<Verdict> result;
  const std::string reason = gate(solved.variant);
  for (const cases::Criterion& criterion : solved.variant.criteria) {
    for (const solver::AirSurface& surface : solved.surface.airs) {
      const cases::Space& room = solved.variant.spaces[surface.air];
      const bool by_humidity = materials::needs_humidity(criterion.test);
      if (by_humidity && !room.humidity) continue;
      const auto margin_at = [&](double bands) {
        return materials::margin(criterion.test, place_of(room, surface.coldest, bands));
      };
      Verdict verdict;
      verdict.criterion = criterion.name;
      verdict.space = surface.air;
      verdict.margin = margin_at(0.0);
      verdict.holds = verdict.margin >= 0.0;
      verdict.band = std::max(verdict.margin - margin_at(-1.0), margin_at(1.0) - verdict.margin);
      verdict.unit = materials::unit_of(criterion.test);
      verdict.certainty =
          std::abs(verdict.margin) > verdict.band ? Certainty::certain : Certainty::too_close;
      verdict.gate = reason;
      result.push_back(std::move(verdict));
    }
  }
  return result;
}

}  // namespace quoin::tools
