// SPDX-License-Identifier: Apache-2.0
#include "materials/moist_air.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::materials {
namespace {

constexpr double pressure_at_freezing = 610.5;  // Pa

/// pressure = pressure_at_freezing exp(steepness t / (offset + t))
struct Branch {
  double steepness;
  double offset;  // degC
};

constexpr Branch over_water = {17.269, 237.3};
constexpr Branch over_ice = {21.875, 265.5};

}  // namespace

double saturation_pressure(double temperature) {
  const auto [steepness, offset] = temperature < 0.0 ? over_ice : over_water;
  return pressure_at_freezing * std::exp(steepness * temperature / (offset + temperature));
}

double saturation_temperature(double pressure) {
  const auto [steepness, offset] = pressure < pressure_at_freezing ? over_ice : over_water;
  const double exponent = std::log(pressure / pressure_at_freezing);
  return offset * exponent / (steepness - exponent);
}

double dew_point(double temperature, double humidity) {
  return saturation_temperature(humidity * saturation_pressure(temperature));
}

double surface_humidity(double air_temperature, double air_humidity, double surface_temperature) {
  return air_humidity * saturation_pressure(air_temperature) /
         saturation_pressure(surface_temperature);
}

double lowest_safe_surface_temperature(double air_temperature, double air_humidity, double limit) {
  return saturation_temperature(air_humidity * saturation_pressure(air_temperature) / limit);
}

double temperature_factor(double surface_temperature, double inside_temperature,
                          double outside_temperature) {
  return (surface_temperature - outside_temperature) / (inside_temperature - outside_temperature);
}

double factor_needed(double air_temperature, double air_humidity, double outside_temperature,
                     double limit) {
  const double lowest = lowest_safe_surface_temperature(air_temperature, air_humidity, limit);
  return temperature_factor(lowest, air_temperature, outside_temperature);
}

double highest_safe_humidity(double air_temperature, double surface_temperature, double limit) {
  return std::min(
      1.0, limit * saturation_pressure(surface_temperature) / saturation_pressure(air_temperature));
}

double vapour_concentration(double temperature, double humidity) {
  return humidity * saturation_pressure(temperature) / vapour_pressure(1.0, temperature);
}

double vapour_pressure(double concentration, double temperature) {
  constexpr double gas_constant = 461.5;  // J/(kg K)
  return concentration * gas_constant * (temperature + 273.15);
}

double seasonal_share(double outside_temperature) {
  return std::clamp(1.0 - outside_temperature / 20.0, 0.0, 1.0);
}

double moisture_excess(double inside_temperature, double inside_humidity,
                       double outside_temperature, double outside_humidity) {
  return vapour_concentration(inside_temperature, inside_humidity) -
         vapour_concentration(outside_temperature, outside_humidity);
}

double critical_mould_humidity(double temperature) {
  if (temperature <= 0.0) return 1.0;
  if (temperature > 20.0) return 0.80;
  const double t = temperature;
  return ((-0.00267 * t + 0.160) * t - 3.13) * t / 100.0 + 1.0;
}

}  // namespace quoin::materials
