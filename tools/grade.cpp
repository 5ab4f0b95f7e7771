// SPDX-License-Identifier: Apache-2.0
#include "tools/grade.hpp"

#include <cmath>
#include <numbers>

#include "materials/moist_air.hpp"

namespace quoin::tools {
namespace {

Degree degree_of(double chance) {
  if (chance < 0.1) return Degree::unlikely;
  if (chance < 0.5) return Degree::marginal;
  return chance < 0.9 ? Degree::likely : Degree::near_certain;
}

}  // namespace

Grade grade_of(const materials::Test& test, const cases::Space& room, const solver::Spot& spot,
               double outside) {
  const double saturated = materials::saturation_pressure(room.temperature);
  const auto margin = [&](double temperature, double humidity) {
    return materials::margin(test, {temperature, spot.factor.value, humidity * saturated});
  };
  const double temperature = spot.temperature.value;
  const double warmth =
      std::hypot(factor_spread * (room.temperature - outside), spot.temperature.band);
  const double humidity = *room.humidity;
  const double by_warmth =
      (margin(temperature + warmth, humidity) - margin(temperature - warmth, humidity)) / 2;
  const double by_humidity = (margin(temperature, humidity - humidity_spread) -
                              margin(temperature, humidity + humidity_spread)) /
                             2;
  const double deviations = margin(temperature, humidity) / std::hypot(by_warmth, by_humidity);
  const double chance = 0.5 * std::erfc(deviations / std::numbers::sqrt2);
  return {degree_of(chance), chance, humidity};
}

}  // namespace quoin::tools
