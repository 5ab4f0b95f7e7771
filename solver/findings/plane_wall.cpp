// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/plane_wall.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::solver {

double departure_from(const PlaneWall& wall, const std::vector<std::vector<double>>& basis,
                      const std::vector<SpaceId>& airs) {
  double largest = 0.0;
  for (std::size_t a = 0; a < airs.size(); ++a) {
    const double at_start = airs[a] == wall.start ? 1.0 : 0.0;
    const double at_finish = airs[a] == wall.finish ? 1.0 : 0.0;
    for (const auto& [node, passed] : wall.nodes) {
      const double plane = at_start + (at_finish - at_start) * passed / wall.total;
      largest = std::max(largest, std::abs(basis[a][node] - plane));
    }
  }
  return largest;
}

}  // namespace quoin::solver
