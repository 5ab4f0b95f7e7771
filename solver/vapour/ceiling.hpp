// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/linear/linear.hpp"

namespace quoin::solver {

/// A potential on a network that must not rise above a ceiling: where it would, a node stays at the
/// ceiling and takes up what flows to it (an obstacle problem). All values per node.
struct CeilingProblem {
  FivePointOperator network;
  std::vector<double> source;   ///< what flows in from the ground, at its potential, and otherwise
  std::vector<double> ceiling;  ///< infinite: none
  std::vector<char> held;       ///< whether the potential of the node is given
  std::vector<double> held_at;  ///< where it is
  /// Nodes at one place that are one: they share the number of one of them, which takes up what
  /// flows to all. Conductances between them are large. Empty: each stands alone.
  std::vector<std::size_t> leader = {};
};

struct CeilingSolution {
  std::vector<double> potential;  ///< NaN where neither the ground nor a held node is reached
  std::vector<double> taken_up;   ///< by nodes at the ceiling; never negative, 0 elsewhere and at
                                  ///< those that are not the leader of their like
  int iterations = 0;             ///< how often the nodes at the ceiling were chosen
  double residual = 0.0;          ///< worst of the linear solves, relative
};

/// Solves by a primal-dual active set: nodes above the ceiling are held there, nodes there that
/// would give instead of take are let go. As the network is an M-matrix this ends after finitely
/// many choices. Throws: SolveError.
[[nodiscard]] CeilingSolution below_ceiling(CeilingProblem problem, const LinearOptions& options);

}  // namespace quoin::solver
