// SPDX-License-Identifier: Apache-2.0
#include "solver/scheme/basis.hpp"

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

std::vector<double> superposed(const std::vector<std::vector<double>>& g,
                               const std::vector<SpaceId>& airs, const SpaceTemperatures& spaces) {
  std::vector<double> sum(g.empty() ? 0 : g.front().size(), 0.0);
  for (std::size_t a = 0; a < airs.size(); ++a) {
    const double weight = spaces[airs[a]];
    for (std::size_t n = 0; n < sum.size(); ++n) sum[n] += weight * g[a][n];
  }
  return sum;
}

}  // namespace quoin::solver
