// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <vector>

#include "solver/findings/findings.hpp"
#include "solver/linear/linear.hpp"

namespace quoin::solver {

/// What is asked of a section for one purpose.
struct Question {
  geometry::Section section;
  Physics physics;
  SpaceTemperatures temperatures;
  std::vector<SpaceId> rooms;  ///< airs whose surfaces are searched for cold spots
  SpaceId outside;             ///< the air that fRsi is measured against
  std::vector<geometry::Point> probes;
  std::optional<double>
      factor_band;  ///< wanted half width of the band of fRsi; absent: do not care
  std::optional<double>
      coupling_band;  ///< wanted relative half width of the brackets; absent: no brackets
  /// What the section shows. Needed where it has slopes that no grid follows.
  geometry::Sheet sheet = {};
};

/// How much may be spent on an answer.
struct Effort {
  double cells_per_metre = 8.0;        ///< of the first grid, where nothing is known yet
  std::size_t node_limit = 1'000'000;  ///< no grid larger than this
  /// Nodes beyond which grids are not made finer for the sake of narrower bands: a second.
  std::size_t patience = 60'000;
  LinearOptions linear;
};

/// Memory that a solution takes while it is computed, bytes a node of its finest grid: both schemes
/// on two grids, with their linear solvers. Measured; several airs take a little more.
inline constexpr double bytes_per_node = 900.0;

}  // namespace quoin::solver
