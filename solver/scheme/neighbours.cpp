// SPDX-License-Identifier: Apache-2.0
#include "solver/scheme/neighbours.hpp"

namespace quoin::solver {

FivePointOperator without_nodes(FivePointOperator network, const std::vector<std::size_t>& nodes) {
  for (const std::size_t n : nodes) {
    for_each_neighbour(
        network, n, [&](std::size_t m, double conductance) { network.ground[m] += conductance; });
    network.east[n] = network.north[n] = 0.0;
    if (n % network.nx > 0) network.east[n - 1] = 0.0;
    if (n >= network.nx) network.north[n - network.nx] = 0.0;
  }
  for (const std::size_t n : nodes) network.ground[n] = 0.0;
  return network;
}

}  // namespace quoin::solver
