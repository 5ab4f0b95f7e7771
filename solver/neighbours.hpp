// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/linear.hpp"

namespace quoin::solver {

/// Calls visit(neighbour, conductance) for the up to four neighbours of a node.
template <class Visit>
void for_each_neighbour(const FivePointOperator& network, std::size_t n, Visit visit) {
  const std::size_t i = n % network.nx;
  if (i + 1 < network.nx) visit(n + 1, network.east[n]);
  if (i > 0) visit(n - 1, network.east[n - 1]);
  if (n + network.nx < network.size()) visit(n + network.nx, network.north[n]);
  if (n >= network.nx) visit(n - network.nx, network.north[n - network.nx]);
}

/// The network with some nodes taken out: they ground their neighbours and become inactive.
[[nodiscard]] FivePointOperator without_nodes(FivePointOperator network,
                                              const std::vector<std::size_t>& nodes);

}  // namespace quoin::solver
