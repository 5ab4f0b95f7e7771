// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/ask/vapour_conditions.hpp"

#include <cmath>

#include "materials/evaporation.hpp"
#include "materials/moist_air.hpp"
#include "materials/moisture.hpp"
#include "tools/answer/ask/conditions.hpp"
#include "tools/answer/ask/physics.hpp"

namespace quoin::tools {
namespace {

constexpr double day = 86400.0;  // s
constexpr std::array<double, 12> days_of_month{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};

double pressure_of(double humidity, double temperature) {
  return humidity * materials::saturation_pressure(temperature);
}

VapourConditions as_stated(const cases::Variant& variant) {
  VapourConditions stated{0.0, temperatures_of(variant), {}};
  for (const cases::Space& space : variant.spaces) {
    const cases::Space& air = variant.spaces[space.air];
    stated.pressures.add(pressure_of(air.humidity.value_or(0.0), air.temperature));
  }
  return stated;
}

VapourConditions in_month(const SolvedVariant& solved, std::size_t month) {
  const cases::Variant& variant = solved.variant;
  const cases::Climate& climate = *variant.climate;
  const double outside = climate.outside_temperature[month];
  const double outside_humidity = climate.outside_humidity[month];
  const solver::SpaceTemperatures airs = airs_in_month(solved, month);
  VapourConditions result{days_of_month[month] * day, temperatures_in_month(solved, month), {}};
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const SpaceId air = variant.spaces[id].air;
    const cases::Space& space = variant.spaces[air];
    const double temperature = airs[air];
    switch (space.is) {
      case cases::SpaceKind::outside:
        result.pressures.add(pressure_of(outside_humidity, outside));
        break;
      case cases::SpaceKind::inside:
        result.pressures.add(
            climate.inside_humidity
                ? pressure_of((*climate.inside_humidity)[month], temperature)
                : vapour_pressure_in(space, temperature, outside, outside_humidity));
        break;
      case cases::SpaceKind::unheated:
        result.pressures.add(pressure_of(space.humidity.value_or(0.0), temperature));
        break;
    }
  }
  return result;
}

double openness_of(const cases::Region& region) {
  const materials::Material& material = region.material;
  std::optional<materials::Sourced> factor = material.vapour_resistance_dry;
  const bool moist = materials::wetter_than_damp(material, region.moisture);
  if (!factor || (moist && material.vapour_resistance_wet)) factor = material.vapour_resistance_wet;
  return factor ? 1.0 / factor->value : 1.0;  // air in a hollow
}

double film_before(const cases::Space& space) {
  return materials::film_sd(
      space.is == cases::SpaceKind::outside
          ? materials::outside_convection(space.wind.value_or(4.0))  // that of Rse 0.04
          : materials::inside_convection);
}

}  // namespace

std::vector<VapourConditions> conditions_of(const SolvedVariant& solved,
                                            cases::Conditions conditions) {
  if (conditions == cases::Conditions::as_stated) return {as_stated(solved.variant)};
  std::vector<VapourConditions> months;
  for (std::size_t month = 0; month < 12; ++month) months.push_back(in_month(solved, month));
  return months;
}

solver::VapourPhysics vapour_physics_of(const cases::Variant& variant, const OtherCoats& coats) {
  solver::VapourPhysics physics;
  for (const cases::Region& region : variant.regions) {
    physics.openness.add(openness_of(region));
    physics.wet.add(0);
  }
  for (const cases::Membrane& membrane : variant.membranes) physics.membrane.add(membrane.coat.sd);
  for (const cases::Space& space : variant.spaces) {
    physics.air.add(space.air);
    const double own = space.coat ? space.coat->sd : 0.0;
    double coat = own;
    if (space.is == cases::SpaceKind::outside) coat = coats.outside.value_or(own);
    if (space.is == cases::SpaceKind::inside) coat = coats.inside.value_or(own);
    Per<RegionId, double> by_region;
    for (const cases::Region& region : variant.regions) {
      by_region.add((region.part == materials::Part::fabric ? coat : 0.0) +
                    (coats.air_film ? film_before(space) : 0.0));
    }
    physics.coat.add(std::move(by_region));
  }
  return physics;
}

}  // namespace quoin::tools
