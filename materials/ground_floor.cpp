// SPDX-License-Identifier: Apache-2.0
#include "materials/ground_floor.hpp"

#include <cmath>
#include <numbers>

namespace quoin::materials {

double transmittance_of(const GroundFloor& floor) {
  // The ground that resists as much as floor and surfaces do, and the wall's thickness with it.
  const double equivalent = floor.wall_thickness + floor.ground * floor.resistance;
  if (equivalent >= floor.width) return floor.ground / (0.457 * floor.width + equivalent);
  const double around = std::numbers::pi * floor.width;
  return 2 * floor.ground / (around + equivalent) * std::log(around / equivalent + 1);
}

double transmittance_of(const SuspendedFloor& floor) {
  // By metre of wall the floor is half its width.
  const double sides = 2 * (floor.height * floor.walls + floor.ventilation) / floor.ground.width;
  return 1 / (floor.resistance + 1 / (transmittance_of(floor.ground) + sides));
}

}  // namespace quoin::materials
