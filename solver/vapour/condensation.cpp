// SPDX-License-Identifier: Apache-2.0
#include "solver/vapour/condensation.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::solver {

VapourGrids vapour_grids(const Solution& solution, const LinearOptions& options) {
  const geometry::Subdivision coarse = geometry::halved(solution.subdivision);
  return {solution.field, field_of(geometry::mesh_of(solution.field.mesh.section, coarse),
                                   solution.physics, options)};
}

Agreed agreed(const Gathered& fine, const std::vector<Gathered>& coarse) {
  constexpr double like = 0.1;  // of the amount by length: more, and it is told by the sum
  const auto found = std::find_if(coarse.begin(), coarse.end(), [&](const Gathered& one) {
    return one.meeting == fine.meeting && one.part == fine.part;
  });
  const Gathered other = found == coarse.end() ? Gathered{} : *found;
  const Estimate amount{fine.amount, std::abs(fine.amount - other.amount), true};
  if (fine.length <= 0.0 || other.length <= 0.0) return {amount, 0.0};
  const double by_length = fine.amount / fine.length;
  const bool alike = std::abs(by_length - other.amount / other.length) <= like * by_length;
  return {amount, alike ? fine.length : 0.0};
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
    const auto [amount, length] = agreed(one, other);
    result.places.push_back({one.meeting, one.part, length, amount, one.most});
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
