// SPDX-License-Identifier: Apache-2.0
#include "tools/judge.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "materials/moist_air.hpp"
#include "materials/moisture.hpp"

namespace quoin::tools {
namespace {

constexpr double mould_limit = 0.8;  // ISO 13788

/// What a criterion yields at one spot: how far it is on the safe side, and by how much that may be
/// off.
struct Margin {
  double value = 0.0;
  double band = 0.0;
  std::string unit;
};

Margin margin(const cases::SurfaceHumidityLimit& test, const cases::Space& room,
              const solver::Spot& spot) {
  const auto humidity_at = [&](double temperature) {
    return materials::surface_humidity(room.temperature, *room.humidity, temperature);
  };
  const double here = humidity_at(spot.temperature.value);
  const double band = std::max(humidity_at(spot.temperature.value - spot.temperature.band) - here,
                               here - humidity_at(spot.temperature.value + spot.temperature.band));
  return {100 * (test.limit - here), 100 * band, "%RH"};
}

Margin margin(const cases::FactorThreshold& test, const cases::Space&, const solver::Spot& spot) {
  return {spot.factor.value - test.threshold, spot.factor.band, "1"};
}

bool can_be_judged(const cases::SurfaceHumidityLimit&, const cases::Space& room) {
  return room.humidity.has_value();
}
bool can_be_judged(const cases::FactorThreshold&, const cases::Space&) { return true; }

bool is_insulation(const cases::Region& region) {
  constexpr double conductivity = 0.1;  // W/(m K), dry; common practice, no source
  return region.part == materials::Part::fabric &&
         region.material.conductivity.value <= conductivity;
}

/// Regions that the sheet shows; a recipe may know more than it paints.
bool is_painted(const cases::Variant& variant, RegionId id) {
  return std::any_of(variant.sheet.begin(), variant.sheet.end(), [&](const geometry::Patch& patch) {
    return patch.fill == geometry::Fill{id};
  });
}

double outside_temperature(const cases::Variant& variant) {
  double coldest = std::numeric_limits<double>::infinity();
  for (const cases::Space& space : variant.spaces) {
    if (space.is == cases::SpaceKind::outside) coldest = std::min(coldest, space.temperature);
  }
  return coldest;
}

}  // namespace

std::vector<AirHumidity> humidities(const SolvedVariant& solved) {
  std::vector<AirHumidity> result;
  const double outside = outside_temperature(solved.variant);
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

std::vector<Verdict> verdicts(const SolvedVariant& solved) {
  std::vector<Verdict> result;
  const std::string reason = gate(solved.variant);
  for (const cases::Criterion& criterion : solved.variant.criteria) {
    for (const solver::AirSurface& surface : solved.surface.airs) {
      const cases::Space& room = solved.variant.spaces[surface.air];
      std::visit(
          [&](const auto& test) {
            if (!can_be_judged(test, room)) return;
            const Margin found = margin(test, room, surface.coldest);
            Verdict verdict;
            verdict.criterion = criterion.name;
            verdict.space = surface.air;
            verdict.holds = found.value >= 0.0;
            verdict.margin = found.value;
            verdict.band = found.band;
            verdict.unit = found.unit;
            verdict.certainty =
                std::abs(found.value) > found.band ? Certainty::certain : Certainty::too_close;
            verdict.gate = reason;
            result.push_back(std::move(verdict));
          },
          criterion.test);
    }
  }
  return result;
}

std::string gate(const cases::Variant& variant) {
  const auto all = geometry::ids(variant.regions);
  const auto shown = [&](auto wanted) {
    return std::find_if(all.begin(), all.end(), [&](RegionId id) {
      return wanted(variant.regions[id]) && is_painted(variant, id);
    });
  };
  const auto insulation = shown(is_insulation);
  const auto wet = shown([](const cases::Region& region) {
    return materials::wetter_than_damp(region.material, region.moisture);
  });
  if (insulation == all.end() || wet == all.end()) return {};
  return fmt::format("{} would be closed in by {} while it is wetter than damp: let it dry first",
                     variant.regions[*wet].name, variant.regions[*insulation].name);
}

}  // namespace quoin::tools
