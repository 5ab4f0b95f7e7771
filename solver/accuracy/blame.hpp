// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/mesh.hpp"

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

/// Of all columns and rows together.
[[nodiscard]] double total(const Blame& blame);

}  // namespace quoin::solver
