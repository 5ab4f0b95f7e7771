// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "solver/findings.hpp"

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
  LinearOptions linear;
};

/// Memory that a solution takes while it is computed, bytes a node of its finest grid: both schemes
/// on two grids, with their linear solvers. Measured; several airs take a little more.
inline constexpr double bytes_per_node = 900.0;

/// Where the section follows every edge of its sheet, on grids; else on triangles, which do. On
/// grids: solves by both schemes on two nested ones, one twice as fine as the other, for the bands;
/// while the wanted accuracy is not reached, cuts those strips finer where the schemes differ in
/// what moves the wanted numbers and starts again, up to the limit of nodes. Throws: SolveError
/// where even the first grid is beyond that limit, before anything is solved; where the linear
/// solver fails; where a solution breaks a law of physics.
[[nodiscard]] Solution solution_of(const Question& question, const Effort& effort);

}  // namespace quoin::solver
