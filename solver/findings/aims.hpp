// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings/question.hpp"

namespace quoin::solver {

/// The band that a grid is refined to: of the coldest spot of an air, K; of probes, K; of
/// couplings, W/(m K).
[[nodiscard]] double aim(const Question& question, SpaceId air);
[[nodiscard]] double aim_of_probes(const Question& question);
[[nodiscard]] double aim_of_couplings(const Question& question,
                                      const std::vector<Coupling>& couplings);

/// How many times as wide as wanted, W/(m K), the widest bracket is.
[[nodiscard]] double shortfall_of(const std::vector<Coupling>& couplings, double wanted);

/// The same of the brackets of a solution.
[[nodiscard]] double coupling_shortfall(const Question& question, const Solution& solution);

/// Whether all that was wanted is reached, by the bands as they are told.
[[nodiscard]] bool is_reached(const Question& question, const Solution& solution);

}  // namespace quoin::solver
