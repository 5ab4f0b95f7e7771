// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/solution.hpp"

namespace quoin::solver {

/// Of the temperatures of all spaces, K.
[[nodiscard]] double span_of(const SpaceTemperatures& spaces);

/// What the factor of an air is measured by, K; the span of all where it is as warm as outside.
[[nodiscard]] double difference(const Question& question, SpaceId air);

/// What steps that stand for slopes add to the band of a spot, and of any probe, K.
[[nodiscard]] double widening(const Question& question, const Spot& spot);
[[nodiscard]] double widening_of_probes(const Question& question);

/// The band that a grid is refined to, K, K and W/(m K): the one wanted, or what steps of slopes
/// add anyway, as finer than these a grid would be in vain.
[[nodiscard]] double aim(const Question& question, SpaceId air, const Spot& spot);
[[nodiscard]] double aim_of_probes(const Question& question);
[[nodiscard]] double aim_of_couplings(const Question& question,
                                      const std::vector<Coupling>& couplings);

/// How many times as wide as wanted, W/(m K), the widest bracket is.
[[nodiscard]] double shortfall_of(const std::vector<Coupling>& couplings, double wanted);

/// Whether all that was wanted is reached, by the bands as they are told.
[[nodiscard]] bool is_reached(const Question& question, const Solution& solution);

}  // namespace quoin::solver
