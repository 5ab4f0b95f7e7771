// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings.hpp"
#include "solver/surplus.hpp"

namespace quoin::solver {

/// The couplings of all pairs of airs between proved bounds, and where the gap between the bounds
/// is.
struct Brackets {
  std::vector<Coupling> couplings;
  Blame gap;  ///< share of each column and row in the gaps of all airs, W/(m K); see gap_of
  std::vector<std::vector<double>> cells;  ///< g of each air in each cell. Shape: airs by cells
};

/// Bounds on the mesh of the field: from above by the field itself, from below by control volumes
/// on the cells of the same mesh. Between two of more than two airs neither scheme is a bound by
/// itself; there the bounds follow from those on the flows of a, of b, and of both together, as 2
/// L_ab = L_a + L_b - L_(a and b). Airs that touch without resistance have an infinite coupling:
/// low alone is meaningful. Throws: SolveError. Source: Dirichlet's and Thomson's principles.
[[nodiscard]] Brackets brackets_of(const Field& field, const Physics& physics,
                                   const LinearOptions& options);

}  // namespace quoin::solver
