// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/mesh.hpp"
#include "solver/assembly.hpp"

namespace quoin::solver {

/// How much each column and row of cells has to do with the error of a quantity.
/// Shape: one value a column and row of cells of the mesh.
struct Blame {
  std::vector<double> columns;
  std::vector<double> rows;
};

/// Adds `weight` times the other to the first.
void add(Blame& to, const Blame& other, double weight);

/// No blame yet. Shape as the mesh.
[[nodiscard]] Blame no_blame(const geometry::Mesh& mesh);

/// What the lines of a mesh contribute to a quantity.
struct Surplus {
  Blame blame;          ///< each line's contribution shared between the cells on both its sides
  double newest = 0.0;  ///< of all lines that `halved` would take away
};

/// Where the field bends, its value on a line differs from the straight line between its
/// neighbours; that difference times the same difference of the influence of the quantity wanted,
/// times the conductance across, is what the line contributes to that quantity. Where it is small
/// the mesh is fine enough. Lines of the section itself are left out: there the field may have a
/// kink. Shape: field and influence by nodes.
[[nodiscard]] Surplus surplus_of(const geometry::Mesh& mesh, const Assembly& assembly,
                                 const std::vector<double>& field,
                                 const std::vector<double>& influence);

}  // namespace quoin::solver
