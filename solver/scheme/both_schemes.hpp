// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/scheme/field.hpp"
#include "solver/scheme/network.hpp"

namespace quoin::solver {

/// A section solved on one mesh by both schemes, ready to be asked for influences.
struct BothSchemes {
  Network nodes;
  Network cells;
  Field field;     ///< by the nodes
  Basis by_cells;  ///< the same airs in the same order
};

/// Throws: SolveError.
[[nodiscard]] BothSchemes both_schemes(geometry::Mesh mesh, const Physics& physics,
                                       const LinearOptions& options);

}  // namespace quoin::solver
