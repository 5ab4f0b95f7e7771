// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/findings/question.hpp"

namespace quoin::solver {

/// From the coldest space to the warmest, K.
[[nodiscard]] double span_of(const SpaceTemperatures& spaces);

/// What the factor of an air is measured by, K; the span of all where it is as warm as outside.
[[nodiscard]] double difference(const Question& question, SpaceId air);

/// fRsi from a surface temperature; NaN where inside and outside are equally warm.
[[nodiscard]] Estimate factor_of(const Question& question, const Estimate& temperature,
                                 SpaceId air);

/// Whether a spot is judged by the same rule as the coldest one of its air.
[[nodiscard]] bool is_alike(const Physics& physics, const Spot& spot, const Spot& coldest);

/// How much colder than the coldest another spot could be, by its band, K.
[[nodiscard]] double reach_below(const Spot& coldest, const Spot& spot);

/// Where another spot could yet be colder, the band of the coldest reaches down to that.
void cover_rivals(const Question& question, AirSurface& air);

}  // namespace quoin::solver
