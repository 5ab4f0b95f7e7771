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
};

/// How much may be spent on an answer.
struct Effort {
  double cells_per_metre = 8.0;        ///< of the first grid, where nothing is known yet
  std::size_t node_limit = 1'000'000;  ///< no grid larger than this
  LinearOptions linear;
};

/// Solves on three nested grids, each twice as fine as the one before, for the bands; while the
/// wanted accuracy is not reached, cuts those strips finer whose newest lines still move the wanted
/// numbers and starts again, up to the limit of nodes. Throws: SolveError where the linear solver
/// fails or a solution breaks a law of physics.
[[nodiscard]] Solution solution_of(const Question& question, const Effort& effort);

}  // namespace quoin::solver
