// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace quoin::materials {

/// A floor that lies on the ground over its whole area, without insulation of its edge.
struct GroundFloor {
  double width = 0.0;  ///< characteristic: area / half the perimeter; of a strip its width, m
  double wall_thickness = 0.0;  ///< m
  double resistance = 0.0;      ///< of the floor and both surfaces, m2K/W
  double ground = 0.0;          ///< conductivity of the ground, W/(m K)
};

/// U of a floor on the ground, W/(m2 K), from inside to outside through the ground.
/// Source: ISO 13370 (memory).
[[nodiscard]] double transmittance_of(const GroundFloor& floor);

/// A suspended floor over a void that outside air passes through, its ground not more than 0.5 m
/// below that outside.
struct SuspendedFloor {
  double resistance = 0.0;   ///< of the floor and both its surfaces, m2K/W
  GroundFloor ground;        ///< of the void: its resistance that of both surfaces
  double height = 0.0;       ///< of the floor's top above the ground outside, m
  double walls = 0.0;        ///< U of the walls around the void, W/(m2 K)
  double ventilation = 0.0;  ///< heat that the air takes along, W/(m K) by metre of wall
};

/// U of a suspended floor, W/(m2 K), from inside to outside through void, ground, walls and air.
/// Source: ISO 13370 (memory).
[[nodiscard]] double transmittance_of(const SuspendedFloor& floor);

}  // namespace quoin::materials
