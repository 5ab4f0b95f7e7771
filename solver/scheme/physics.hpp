// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>

#include "geometry/surface.hpp"

namespace quoin::solver {

using geometry::Facing;
using geometry::Per;
using geometry::RegionId;
using geometry::SpaceId;

/// Everything about materials and surroundings that conduction needs, as numbers, for one purpose.
struct Physics {
  Per<RegionId, double> conductivity;  ///< W/(m K)
  /// Surface resistance between a space and a region by facing, m2K/W; 0 fixes the temperature.
  Per<SpaceId, Per<RegionId, std::array<double, 3>>> resistance;
  Per<SpaceId, SpaceId> air;  ///< of each space: itself, or the space it is like

  Per<RegionId, char> is_fabric;  ///< not a frame or glazing: its cold spots are judged for mould

  [[nodiscard]] double surface_resistance(SpaceId space, RegionId region, Facing facing) const {
    return resistance[space][region][static_cast<std::size_t>(facing)];
  }
};

/// Temperature of each space, degC.
using SpaceTemperatures = Per<SpaceId, double>;

}  // namespace quoin::solver
