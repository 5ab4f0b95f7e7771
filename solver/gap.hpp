// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/mesh.hpp"
#include "solver/assembly.hpp"
#include "solver/surplus.hpp"

namespace quoin::solver {

/// Where the two schemes differ, while one air is at 1 and all others at 0: the energy of the
/// difference between the flux of the nodes and the flux of the cells. Its sum is the gap between
/// the upper and the lower bound of the flow of that air, W/(m K), exactly. A part of it belongs to
/// each strip: what the cells see change along x is mended by finer columns, what the nodes see
/// change along y by finer rows, and the same with the axes exchanged; what neither sees change is
/// shared between both. Shape: nodes holds the field at nodes, cells at cells. Source: the identity
/// of Prager and Synge (Quarterly of Applied Mathematics 5, 1947).
[[nodiscard]] Blame gap_of(const geometry::Mesh& mesh, const Physics& physics,
                           const Assembly& cell_assembly, SpaceId air,
                           const std::vector<double>& nodes, const std::vector<double>& cells);

}  // namespace quoin::solver
