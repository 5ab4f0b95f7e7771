// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>

#include "solver/accuracy/blame.hpp"
#include "solver/scheme/assembly.hpp"

namespace quoin::solver {

/// One field by both schemes, on one mesh.
struct Twin {
  std::span<const double> nodes;  ///< at nodes
  std::span<const double> cells;  ///< at the middle of cells
  Per<SpaceId, double> spaces;    ///< in the surroundings
};

/// What two fields have in common where their schemes differ.
struct Gap {
  double sum = 0.0;  ///< with signs
  Blame blame;       ///< without: what of it falls on each column and row
};

/// The scalar product of two differences: that between the flux of the nodes and the flux of the
/// cells in one field, and the same in another. In units of the product of the fields times W/(m
/// K). Of a field with itself it is the energy of the difference: while one air is at 1 and all
/// others at 0, exactly the gap between the upper and the lower bound of the flow of that air. Of a
/// field with the influence of a source it is, nearly, twice as much as the value of the nodes
/// there lacks. A part belongs to each strip: what the cells see change along x is mended by finer
/// columns, what the nodes see change along y by finer rows, and the same with the axes exchanged;
/// what neither sees change is shared between both. Source: the identity of Prager and Synge
/// (Quarterly of Applied Mathematics 5, 1947), taken between two fields.
[[nodiscard]] Gap gap_between(const geometry::Mesh& mesh, const Physics& physics,
                              const Assembly& cell_assembly, const Twin& first, const Twin& second);

}  // namespace quoin::solver
