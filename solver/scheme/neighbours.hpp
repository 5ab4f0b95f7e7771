// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/linear/linear.hpp"
#include "solver/scheme/assembly.hpp"

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

/// The same in an assembly, whose nodes beyond the grid may have any neighbours.
template <class Visit>
void for_each_neighbour(const Assembly& assembly, std::size_t n, Visit visit) {
  if (n < assembly.network.size()) for_each_neighbour(assembly.network, n, visit);
  for (const Link& link : assembly.further_links) {
    if (link.one == n) visit(link.other, link.conductance);
    if (link.other == n) visit(link.one, link.conductance);
  }
}

/// The network with some nodes taken out: they ground their neighbours and become inactive.
[[nodiscard]] FivePointOperator without_nodes(FivePointOperator network,
                                              const std::vector<std::size_t>& nodes);

}  // namespace quoin::solver
