// SPDX-License-Identifier: Apache-2.0
#include "geometry/recipes/closer.hpp"

#include <algorithm>

namespace quoin::geometry {

std::optional<std::string> objection_to_closer(const std::vector<Layer>& wall, RegionId closer,
                                               double depth, double length) {
  if (!closer.valid()) return std::nullopt;
  if (std::none_of(wall.begin(), wall.end(), [](const Layer& layer) { return layer.hollow; })) {
    return "a closer closes air layers, but the wall has none";
  }
  if (depth > length - snap_tolerance) {
    return "the closer is as long as the wall: make the wall longer";
  }
  return std::nullopt;
}

}  // namespace quoin::geometry
