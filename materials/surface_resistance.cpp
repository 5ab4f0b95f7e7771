// SPDX-License-Identifier: Apache-2.0
#include "materials/surface_resistance.hpp"

#include "materials/clear_sky.hpp"
#include "materials/evaporation.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::materials {
namespace {

constexpr double emissivity = 0.9;  // of building surfaces other than bare metal

/// The coefficient of radiation between black surfaces about a temperature, W/(m2K).
double black_radiation(double temperature) {
  constexpr double stefan_boltzmann = 5.67e-8;  // W/(m2K4)
  return 4.0 * stefan_boltzmann * std::pow(temperature + 273.15, 3.0);
}

HeatDirection through(const Face& face) {
  if (face.facing == Facing::sideways) return HeatDirection::horizontal;
  if (face.heat) return *face.heat;
  const bool looks_along_the_heat = face.side == Side::unheated;
  return (face.facing == Facing::up) == looks_along_the_heat ? HeatDirection::up
                                                             : HeatDirection::down;
}

/// The coefficient of convection in an air layer, W/(m2K): still air conducts 0.025 W/(m K).
double layer_convection(double thickness, HeatDirection direction) {
  const double still = 0.025 / thickness;
  switch (direction) {
    case HeatDirection::up:
      return std::max(1.95, still);
    case HeatDirection::horizontal:
      return std::max(1.25, still);
    case HeatDirection::down:
      return std::max(0.12 * std::pow(thickness, -0.44), still);
  }
  return still;
}

}  // namespace

double still_air_resistance(HeatDirection direction) {
  switch (direction) {
    case HeatDirection::up:
      return 0.10;
    case HeatDirection::horizontal:
      return 0.13;
    case HeatDirection::down:
      return 0.17;
  }
  return 0.13;
}

double surface_resistance(const Face& face, Purpose purpose) {
  if (face.side == Side::outside) return face.wind ? outside_resistance(*face.wind) : 0.04;
  if (purpose == Purpose::heat_flow) return still_air_resistance(through(face));
  return is_fabric(face.part) ? 0.25 : 0.13;
}

double outside_resistance(double wind) {
  return 1.0 / (outside_convection(wind) + emissivity * black_radiation(0.0));
}

double cooling_by(const ClearSky& sky, double resistance) {
  return resistance * sky.view * emissivity * black_radiation(0.0) * sky.colder_by;
}

double air_layer_resistance(double thickness, HeatDirection direction) {
  const double exchange = 1.0 / (1.0 / emissivity + 1.0 / emissivity - 1.0);
  return 1.0 / (layer_convection(thickness, direction) + exchange * black_radiation(10.0));
}

}  // namespace quoin::materials
