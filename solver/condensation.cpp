// SPDX-License-Identifier: Apache-2.0
#include "solver/condensation.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::solver {

VapourGrids vapour_grids(const Solution& solution, const LinearOptions& options) {
  const geometry::Subdivision coarse = geometry::halved(solution.subdivision);
  return {solution.field, field_of(geometry::mesh_of(solution.field.mesh.section, coarse),
                                   solution.physics, options)};
}

Estimate between_grids(double fine, double coarse) { return {fine, std::abs(fine - coarse), true}; }

double amount_at(const std::vector<Gathered>& all, const Gathered& like) {
  const auto found = std::find_if(all.begin(), all.end(), [&](const Gathered& one) {
    return one.meeting == like.meeting && one.part == like.part;
  });
  return found == all.end() ? 0.0 : found->amount;
}

Condensation condensation_at(const VapourGrids& grids, const SpaceTemperatures& spaces,
                             const VapourPhysics& physics, const SpacePressures& pressures,
                             const LinearOptions& options) {
  const auto solve = [&](const Field& field) {
    return vapour_field(field.mesh, temperatures(field, spaces), physics, pressures, options);
  };
  const VapourField coarse = solve(grids.coarse);
  Condensation result;
  result.field = solve(grids.fine);
  const std::vector<Gathered> other = Sites(grids.coarse.mesh).gathered(coarse.condensing);
  const Sites sites(grids.fine.mesh);
  for (const Gathered& one : sites.gathered(result.field.condensing)) {
    result.places.push_back({one.meeting, one.part, one.length,
                             between_grids(one.amount, amount_at(other, one)), one.most});
  }
  for (std::size_t n = 0; n < result.field.pressure.size(); ++n) {
    const double humidity = result.field.pressure[n] / result.field.saturation[n];
    if (!(humidity > result.humidity * (1.0 + 1e-9))) continue;
    result.humidity = humidity;
    result.dampest = grids.fine.mesh.place(sites.nodes().of_mesh(n));
  }
  return result;
}

}  // namespace quoin::solver
