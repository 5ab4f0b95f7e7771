// SPDX-License-Identifier: Apache-2.0
#include "materials/evaporation.hpp"

#include "materials/moist_air.hpp"

namespace quoin::materials {
namespace {

constexpr double transfer = 6.85e-9;      // kg/(m2 s Pa) by W/(m2K)
constexpr double permeability = 2.0e-10;  // of still air, kg/(m s Pa)

}  // namespace

double film_sd(double convection) { return permeability / (transfer * convection); }

double evaporation_rate(const WetSurface& wet, double surface_temperature, double vapour_pressure,
                        double convection) {
  const double film = 1.0 / (transfer * convection);
  const double coat = wet.coat_sd / permeability;
  return (wet.wetness * saturation_pressure(surface_temperature) - vapour_pressure) / (film + coat);
}

}  // namespace quoin::materials
