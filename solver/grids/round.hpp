// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "solver/accuracy/place_value.hpp"
#include "solver/findings/question.hpp"

namespace quoin::solver {

/// One of the grids, solved by both schemes.
struct GridLevel {
  BothSchemes both;
  BothTemperatures temperatures;

  GridLevel(const Question& question, const geometry::Section& section,
            const geometry::Subdivision& subdivision, const LinearOptions& options)
      : both(both_schemes(geometry::mesh_of(section, subdivision), question.physics, options)),
        temperatures(both, question.physics, question.temperatures) {}
};

/// A grid solved and what is asked read from it; the grid half as fine, which bands need in the
/// end, is solved only where the first look does not already say that they are too wide.
struct Round {
  GridLevel fine;
  std::optional<GridLevel> coarse;
  Solution solution;
  std::vector<TwoSided> coldest;  ///< on the fine grid, of each air
  std::vector<TwoSided> probes;   ///< on the fine grid
  Blame blame;             ///< what keeps bands from being narrower, in units of those aimed at
  double shortfall = 0.0;  ///< how many times as wide as aimed at the widest band is
};

/// Throws: SolveError where the linear solver fails or a solution breaks a law of physics.
[[nodiscard]] Round round_on(const Question& question, const geometry::Section& section,
                             const geometry::Subdivision& fine, const LinearOptions& options);

/// The answer of a round on the subdivision it was solved on. Throws: SolveError as `round_on`.
[[nodiscard]] Solution answer_of(Round round, const Question& question,
                                 const geometry::Section& section,
                                 const geometry::Subdivision& fine, const LinearOptions& options);

}  // namespace quoin::solver
