// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <utility>
#include <vector>

#include "geometry/mesh.hpp"
#include "solver/linear/linear.hpp"
#include "solver/scheme/physics.hpp"

namespace quoin::solver {

class Network;

/// The solution of one section on one mesh for one purpose: a basis field for each air, so that any
/// temperatures of the spaces are a weighted sum.
struct Field {
  geometry::Mesh mesh;
  std::vector<SpaceId> airs;               ///< those with a surface in the section
  std::vector<std::vector<double>> basis;  ///< g of each air at each node. Shape: airs by nodes
  std::vector<char> solid;                 ///< whether each node belongs to material. Shape: nodes
  std::vector<double> coupling;  ///< flow from air a to air b at 1 K, W/(m K). Shape: airs by airs
  std::vector<double> space_flow;  ///< flow into the section from space s when air a is 1 K warmer
                                   ///< than the others, W/(m K). Shape: airs by spaces
  /// Airs that meet in a node without any resistance between: the flow there is infinite, and the
  /// couplings of the pair only grow with refinement. The lower id first.
  std::vector<std::pair<SpaceId, SpaceId>> touching;
  double residual = 0.0;  ///< worst relative residual of the linear solves
  int iterations = 0;
  bool fell_back = false;  ///< multigrid failed; the direct method answered
};

/// Temperature at every node for given temperatures of the spaces, degC; 0 outside the material.
[[nodiscard]] std::vector<double> temperatures(const Field& field, const SpaceTemperatures& spaces);

/// Temperature anywhere in the material, linear between nodes, degC. The place must lie in the
/// grid.
[[nodiscard]] double temperature_at(const Field& field, const std::vector<double>& nodes,
                                    geometry::Point place);

/// Heat flow from each space into the section, W/m.
[[nodiscard]] Per<SpaceId, double> flows(const Field& field, const SpaceTemperatures& spaces);

/// Solves a section on a mesh with control volumes around the nodes.
/// Throws: SolveError.
[[nodiscard]] Field field_of(geometry::Mesh mesh, const Physics& physics,
                             const LinearOptions& options);

/// The same where the network of that mesh is already made ready.
[[nodiscard]] Field field_of(geometry::Mesh mesh, const Physics& physics, const Network& network);

}  // namespace quoin::solver
