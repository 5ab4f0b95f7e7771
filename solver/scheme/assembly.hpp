// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "geometry/mesh.hpp"
#include "geometry/two_sided.hpp"
#include "solver/linear/linear.hpp"
#include "solver/scheme/physics.hpp"

namespace quoin::solver {

/// The way from one unknown to the air of a space, through half a face and its surface resistance.
struct AirLink {
  std::size_t unknown = 0;
  SpaceId space;
  double conductance = 0.0;  ///< W/(m K)
  /// Of a cell, which of its sides; absent for its diagonal, and for a node.
  std::optional<geometry::CellSide> side;
};

/// A node on a surface without resistance: it has the temperature of the air. Where surfaces of
/// several spaces without resistance meet in one node, it has their mean.
struct FixedNode {
  std::size_t node = 0;
  std::vector<SpaceId> spaces;
};

/// A section turned into a network, before any temperature is known.
struct Assembly {
  FivePointOperator network;  ///< all conductances, fixed nodes still free
  std::vector<AirLink> links;
  std::vector<FixedNode> fixed;
  std::vector<char> solid;  ///< whether an unknown belongs to material. Shape: unknowns
  /// Of nodes beyond the grid of the network, numbered on from its size: see geometry::Mesh.
  std::vector<double> further_ground = {};
  std::vector<Link> further_links = {};  ///< at least one end beyond the grid

  [[nodiscard]] std::size_t unknowns() const { return network.size() + further_ground.size(); }
};

/// Control volumes around the nodes: the conductance between two neighbouring nodes is the sum over
/// the two cells that share their edge of conductivity x half width / distance. Exact for layers in
/// series and side by side; its heat flow is never below the true one (Dirichlet's principle on
/// linear elements over right triangles, whose couplings these are).
[[nodiscard]] Assembly node_centred(const geometry::Mesh& mesh, const Physics& physics);

/// The same on nodes that membranes may part. What passes between twins is left out.
/// Shape: unknowns are the nodes of `nodes`.
[[nodiscard]] Assembly node_centred(const geometry::Mesh& mesh, const geometry::TwoSided& nodes,
                                    const Physics& physics);

/// Control volumes on the cells, joined by the series conductances of their halves: its heat flow
/// is never above the true one (Thomson's principle on fluxes constant across each cell side).
/// Shape: unknowns are the cells, (i, j) at index j * columns + i.
[[nodiscard]] Assembly cell_centred(const geometry::Mesh& mesh, const Physics& physics);

}  // namespace quoin::solver
