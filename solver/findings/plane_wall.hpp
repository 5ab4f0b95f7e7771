// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

#include "solver/scheme/physics.hpp"

namespace quoin::solver {

/// A node on a way from the air at one end of a plane wall to that at the other.
struct WallNode {
  std::size_t node = 0;
  double passed = 0.0;  ///< resistance from the first air, m2K/W
};

/// A plane wall of `total` resistance between two airs, and the nodes that would lie in it.
struct PlaneWall {
  SpaceId start, finish;  ///< airs
  std::vector<WallNode> nodes;
  double total = 0.0;  ///< from air to air, m2K/W
};

/// The largest departure of basis fields at the nodes from what they would be in the plane wall.
/// Shape: basis holds a field for each of `airs`.
[[nodiscard]] double departure_from(const PlaneWall& wall,
                                    const std::vector<std::vector<double>>& basis,
                                    const std::vector<SpaceId>& airs);

}  // namespace quoin::solver
