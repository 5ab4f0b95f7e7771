// SPDX-License-Identifier: Apache-2.0
#include "materials/evaporation.hpp"

#include "materials/moist_air.hpp"

namespace quoin::materials {

double evaporation_rate(const WetSurface& wet, double surface_temperature, double vapour_pressure,
                        double convection) {
  const double film = 1.0 / (6.85e-9 * convection);
  const double coat = wet.coat_sd / 2.0e-10;
  return (wet.wetness * saturation_pressure(surface_temperature) - vapour_pressure) / (film + coat);
}

}  // namespace quoin::materials
