// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The coldest spot of the room that comes out worst, degC; NaN where nothing is judged.
[[nodiscard]] double coldest_in(const SolvedVariant& solved);

/// The humidity of the room, 0 to 1, up to which its limits are kept nine times in ten, where drier
/// air is what is missing.
[[nodiscard]] std::optional<double> drier_air(const SolvedVariant& solved);

/// Whether drier air alone would make a variant safe, at the humidity that `drier_air` gives.
[[nodiscard]] bool safe_when_drier(const SolvedVariant& solved);

/// What to do, in order, to come from the first variant to the chosen one, each step with what it
/// gains, and what its air still has to be. The first variant has an outcome.
[[nodiscard]] std::vector<std::string> advised_steps(const Results& results, std::size_t chosen);

}  // namespace quoin::tools
