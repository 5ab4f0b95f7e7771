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

}  // namespace quoin::materials
