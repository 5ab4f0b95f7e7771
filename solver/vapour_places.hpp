// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <utility>
#include <vector>

#include "geometry/mesh.hpp"

namespace quoin::solver {

/// What meets at a node: two materials, a material and a space, or twice the same material where
/// the node lies within it.
using Meeting = std::pair<geometry::Fill, geometry::Fill>;

/// Where the meeting of a node lies and how much of it the node stands for.
struct Site {
  Meeting meeting;
  double length = 0.0;  ///< of the line where the two meet, m; 0 within a material
};

/// The site of every node. Where more than two meet, the two count whose common line is longest
/// there. Shape: nodes of the mesh.
[[nodiscard]] std::vector<Site> sites_of(const geometry::Mesh& mesh);

/// Something spread over nodes, summed by what meets there.
struct Gathered {
  Meeting meeting;
  double length = 0.0;   ///< of the line over which it is spread, m; 0 within a material
  double amount = 0.0;   ///< the sum over the nodes
  geometry::Point most;  ///< where most of it is, by length of line or by area
};

/// Sums a value of each node by meeting, the largest sum first. Nodes with nothing do not count.
[[nodiscard]] std::vector<Gathered> gathered(const geometry::Mesh& mesh,
                                             const std::vector<double>& amount);

}  // namespace quoin::solver
