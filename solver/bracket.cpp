// SPDX-License-Identifier: Apache-2.0
#include "solver/bracket.hpp"

#include <algorithm>
#include <limits>

#include "solver/assembly.hpp"
#include "solver/basis.hpp"

namespace quoin::solver {

std::vector<Coupling> bracketed_couplings(const Field& field, const Physics& physics,
                                          const LinearOptions& options) {
  const std::vector<double> from_below =
      couplings(basis_of(cell_centred(field.mesh, physics), physics.air, options), physics.air);
  const std::vector<double>& from_above = field.coupling;
  const std::size_t airs = field.airs.size();

  // Flow of a alone, and of a and b together, to all others, in either scheme.
  const auto alone = [airs](const std::vector<double>& flow, std::size_t a) {
    return flow[a * airs + a];
  };
  const auto together = [&](const std::vector<double>& flow, std::size_t a, std::size_t b) {
    return alone(flow, a) + alone(flow, b) - 2 * flow[a * airs + b];
  };
  std::vector<Coupling> result;
  for (std::size_t a = 0; a < airs; ++a) {
    for (std::size_t b = a + 1; b < airs; ++b) {
      Coupling coupling{field.airs[a], field.airs[b]};
      const double below = alone(from_below, a) + alone(from_below, b);
      const double above = alone(from_above, a) + alone(from_above, b);
      // Two airs alone exchange all they give: together they give nothing, not even rounding.
      const bool others = airs > 2;
      coupling.low = std::max(0.0, (below - (others ? together(from_above, a, b) : 0.0)) / 2);
      coupling.high = (above - (others ? together(from_below, a, b) : 0.0)) / 2;
      coupling.value = (coupling.low + coupling.high) / 2;
      const bool touching =
          std::find(field.touching.begin(), field.touching.end(),
                    std::pair{field.airs[a], field.airs[b]}) != field.touching.end();
      if (touching) coupling.value = coupling.high = std::numeric_limits<double>::infinity();
      result.push_back(coupling);
    }
  }
  return result;
}

}  // namespace quoin::solver
