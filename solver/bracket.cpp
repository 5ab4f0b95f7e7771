// SPDX-License-Identifier: Apache-2.0
#include "solver/bracket.hpp"

#include <algorithm>
#include <limits>
#include <utility>

#include "solver/assembly.hpp"
#include "solver/gap.hpp"
#include "solver/network.hpp"

namespace quoin::solver {
namespace {

Coupling coupling_between(std::size_t a, std::size_t b, const Field& field,
                          const std::vector<double>& from_below) {
  const std::vector<double>& from_above = field.coupling;
  const std::size_t airs = field.airs.size();
  // Flow of a alone, and of a and b together, to all others, in either scheme.
  const auto alone = [airs](const std::vector<double>& flow, std::size_t n) {
    return flow[n * airs + n];
  };
  const auto together = [&](const std::vector<double>& flow) {
    return alone(flow, a) + alone(flow, b) - 2 * flow[a * airs + b];
  };
  const double below = alone(from_below, a) + alone(from_below, b);
  const double above = alone(from_above, a) + alone(from_above, b);
  // Two airs alone exchange all they give: together they give nothing, not even rounding.
  const bool others = airs > 2;
  Coupling coupling{field.airs[a], field.airs[b]};
  coupling.low = std::max(0.0, (below - (others ? together(from_above) : 0.0)) / 2);
  coupling.high = std::max(0.0, (above - (others ? together(from_below) : 0.0)) / 2);
  if (coupling.low > coupling.high)
    std::swap(coupling.low, coupling.high);  // exact but for rounding
  coupling.value = (coupling.low + coupling.high) / 2;
  const auto pair = std::pair{field.airs[a], field.airs[b]};
  if (std::find(field.touching.begin(), field.touching.end(), pair) != field.touching.end()) {
    coupling.value = coupling.high = std::numeric_limits<double>::infinity();
  }
  return coupling;
}

}  // namespace

Brackets brackets_of(const Field& field, const Physics& physics, const LinearOptions& options) {
  const Network network(cell_centred(field.mesh, physics), options);
  Basis below = network.basis(physics.air);
  const std::vector<double> from_below = couplings(below, physics.air);
  Brackets brackets{{}, no_blame(field.mesh), {}};
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    for (std::size_t b = a + 1; b < field.airs.size(); ++b) {
      brackets.couplings.push_back(coupling_between(a, b, field, from_below));
    }
    add(brackets.gap,
        gap_of(field.mesh, physics, network.assembly(), field.airs[a], field.basis[a], below.g[a]),
        1.0);
  }
  brackets.cells = std::move(below.g);
  return brackets;
}

}  // namespace quoin::solver
