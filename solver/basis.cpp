// SPDX-License-Identifier: Apache-2.0
#include "solver/basis.hpp"

namespace quoin::solver {

std::vector<double> couplings(const Basis& basis, const Per<SpaceId, SpaceId>& air) {
  const std::size_t airs = basis.airs.size();
  std::vector<double> result(airs * airs, 0.0);
  for (std::size_t a = 0; a < airs; ++a) {
    for (std::size_t b = 0; b < airs; ++b) {
      for (const SpaceId space : geometry::ids(air)) {
        if (air[space] != basis.airs[b]) continue;
        const double flow = basis.space_flow[a * air.size() + space.index];
        result[a * airs + b] += a == b ? flow : -flow;
      }
    }
  }
  return result;
}

}  // namespace quoin::solver
