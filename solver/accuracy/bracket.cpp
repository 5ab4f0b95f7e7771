// SPDX-License-Identifier: Apache-2.0
#include "solver/accuracy/bracket.hpp"

#include <algorithm>
#include <limits>
#include <utility>

#include "solver/accuracy/gap.hpp"

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

Brackets brackets_of(const BothSchemes& both, const Physics& physics) {
  const Field& field = both.field;
  const std::vector<double> from_below = couplings(both.by_cells, physics.air);
  Brackets brackets{{}, no_blame(field.mesh)};
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    for (std::size_t b = a + 1; b < field.airs.size(); ++b) {
      brackets.couplings.push_back(coupling_between(a, b, field, from_below));
    }
    Per<SpaceId, double> one(physics.air.size());
    for (const SpaceId space : geometry::ids(one)) {
      one[space] = physics.air[space] == field.airs[a] ? 1.0 : 0.0;
    }
    const Twin twin{field.basis[a], both.by_cells.g[a], std::move(one)};
    add(brackets.gap, gap_between(field.mesh, physics, both.cells.assembly(), twin, twin).blame,
        1.0);
  }
  return brackets;
}

}  // namespace quoin::solver
