// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/judge/judge.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "materials/moist_air.hpp"
#include "materials/surface_resistance.hpp"
#include "tools/answer/ask/physics.hpp"
#include "tools/answer/judge/gate.hpp"

namespace quoin::tools {
namespace {

/// A cold spot as criteria look at it; its temperature or its factor may be off by the band.
materials::Place place_of(const cases::Space& room, const solver::Spot& spot, double bands = 0.0) {
  return {spot.temperature.value + bands * spot.temperature.band,
          spot.factor.value + bands * spot.factor.band,
          room.humidity.value_or(0.0) * materials::saturation_pressure(room.temperature)};
}

/// The humidity or the factor at which a spot of this temperature, degC, just passes.
double limit_of(const materials::Test& test, double temperature) {
  if (const auto* factor = std::get_if<materials::FactorThreshold>(&test)) return factor->threshold;
  return materials::highest_pressure(test, temperature) /
         materials::saturation_pressure(temperature);
}

/// The criterion of humidity that asks most of a spot; 80 % where none asks for more.
cases::Criterion strictest(const cases::Variant& variant, const materials::Place& place) {
  cases::Criterion strictest = mould_limit();
  bool stated = false;
  for (const cases::Criterion& each : variant.criteria) {
    if (!materials::needs_humidity(each.test)) continue;
    const double by = materials::margin(each.test, place);
    const double known = materials::margin(strictest.test, place);
    if (by > known || (stated && by == known)) continue;
    strictest = each;
    stated = true;
  }
  return strictest;
}

}  // namespace

cases::Criterion mould_limit() { return {"80 %", cases::SurfaceHumidityLimit{0.8}}; }

std::vector<const solver::AirSurface*> judged_surfaces(const SolvedVariant& solved) {
  std::vector<const solver::AirSurface*> rooms, all;
  for (const solver::AirSurface& surface : solved.surface.airs) {
    all.push_back(&surface);
    if (solved.variant.spaces[surface.air].is == cases::SpaceKind::inside)
      rooms.push_back(&surface);
  }
  return rooms.empty() ? all : rooms;
}

const solver::AirSurface& surface_of(const SolvedVariant& solved, SpaceId air) {
  return *std::find_if(solved.surface.airs.begin(), solved.surface.airs.end(),
                       [&](const solver::AirSurface& surface) { return surface.air == air; });
}

std::vector<AirHumidity> humidities(const SolvedVariant& solved) {
  std::vector<AirHumidity> result;
  const double outside = solved.variant.spaces[outside_of(solved.variant)].temperature;
  for (const solver::AirSurface& surface : solved.surface.airs) {
    const cases::Space& room = solved.variant.spaces[surface.air];
    if (!room.humidity) continue;
    const materials::Place place = place_of(room, surface.coldest);
    const double spot = place.temperature;
    AirHumidity air;
    air.air = surface.air;
    air.humidity = *room.humidity;
    air.dew_point = materials::dew_point(room.temperature, *room.humidity);
    air.mould_temperature =
        materials::lowest_safe_surface_temperature(room.temperature, *room.humidity, 0.8);
    air.surface_humidity = materials::surface_humidity(room.temperature, *room.humidity, spot);
    air.margin_to_mould = spot - air.mould_temperature;
    air.margin_to_condensation = spot - air.dew_point;
    const cases::Criterion asked = strictest(solved.variant, place);
    air.limit_by = asked.name;
    air.limit = limit_of(asked.test, spot);
    air.lowest_temperature = materials::lowest_temperature(asked.test, place.vapour_pressure,
                                                           {room.temperature, outside});
    air.factor_needed =
        room.temperature == outside
            ? std::numeric_limits<double>::quiet_NaN()
            : materials::temperature_factor(air.lowest_temperature, room.temperature, outside);
    air.highest_safe_humidity = std::min(1.0, materials::highest_pressure(asked.test, spot) /
                                                  materials::saturation_pressure(room.temperature));
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

const solver::AirSurface& surface_for(const SolvedVariant& solved,
                                      const solver::AirSurface& surface,
                                      const cases::Criterion& criterion) {
  const auto* factor = std::get_if<cases::FactorThreshold>(&criterion.test);
  if (factor == nullptr || !factor->resistance || criterion.with_any_resistance) return surface;
  const double heat =
      materials::surface_resistance(materials::Face{}, materials::Purpose::heat_flow);
  if (solved.variant.spaces[surface.air].resistance || std::abs(*factor->resistance - heat) > 1e-9)
    return surface;
  for (const solver::AirSurface& other : solved.heat.airs) {
    if (other.air == surface.air) return other;
  }
  return surface;
}

Verdict judged(const SolvedVariant& solved, const solver::AirSurface& surface,
               const cases::Criterion& criterion) {
  const cases::Space& room = solved.variant.spaces[surface.air];
  const solver::Spot& spot = surface_for(solved, surface, criterion).coldest;
  const auto margin_at = [&](double bands) {
    return materials::margin(criterion.test, place_of(room, spot, bands));
  };
  Verdict verdict;
  verdict.criterion = criterion.name;
  verdict.space = surface.air;
  verdict.limit = limit_of(criterion.test, spot.temperature.value);
  verdict.has = materials::needs_humidity(criterion.test)
                    ? materials::surface_humidity(room.temperature, room.humidity.value_or(0.0),
                                                  spot.temperature.value)
                    : spot.factor.value;
  verdict.margin = margin_at(0.0);
  verdict.holds = verdict.margin >= 0.0;
  verdict.band = std::max(verdict.margin - margin_at(-1.0), margin_at(1.0) - verdict.margin);
  verdict.unit = materials::unit_of(criterion.test);
  return verdict;
}

std::vector<Verdict> verdicts(const SolvedVariant& solved) {
  std::vector<Verdict> result;
  const std::string reason = gate(solved.variant);
  for (const cases::Criterion& criterion : solved.variant.criteria) {
    for (const solver::AirSurface* surface : judged_surfaces(solved)) {
      const bool by_humidity = materials::needs_humidity(criterion.test);
      if (by_humidity && !solved.variant.spaces[surface->air].humidity) continue;
      Verdict verdict = judged(solved, *surface, criterion);
      verdict.gate = reason;
      result.push_back(std::move(verdict));
    }
  }
  return result;
}

}  // namespace quoin::tools
