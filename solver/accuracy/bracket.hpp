// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/accuracy/blame.hpp"
#include "solver/scheme/both_schemes.hpp"
#include "solver/scheme/coupling.hpp"

namespace quoin::solver {

/// The couplings of all pairs of airs between proved bounds, and where the gap between the bounds
/// is.
struct Brackets {
  std::vector<Coupling> couplings;
  Blame gap;  ///< share of each column and row in the gaps of all airs, W/(m K); see gap_between
};

/// Bounds on one mesh: from above by the nodes, from below by the cells. Between two of more than
/// two airs neither scheme is a bound by itself; there the bounds follow from those on the flows of
/// a, of b, and of both together, as 2 L_ab = L_a + L_b - L_(a and b). Airs that touch without
/// resistance have an infinite coupling: low alone is meaningful. Source: Dirichlet's and Thomson's
/// principles.
[[nodiscard]] Brackets brackets_of(const BothSchemes& both, const Physics& physics);

}  // namespace quoin::solver
