// SPDX-License-Identifier: Apache-2.0
#include "solver/scheme/both_schemes.hpp"

#include <utility>

namespace quoin::solver {

BothSchemes both_schemes(geometry::Mesh mesh, const Physics& physics,
                         const LinearOptions& options) {
  Network nodes(node_centred(mesh, physics), options);
  Network cells(cell_centred(mesh, physics), options);
  Field field = field_of(std::move(mesh), physics, nodes);
  Basis by_cells = cells.basis(physics.air);
  return {std::move(nodes), std::move(cells), std::move(field), std::move(by_cells)};
}

}  // namespace quoin::solver
