// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// "October to April, June": runs of months, 0 to 11, over the turn of the year too.
[[nodiscard]] std::string runs_of(const std::vector<std::size_t>& months);

/// What the year asks of a room and what its cold spots have, in plain words. The year has cold
/// spots.
[[nodiscard]] std::string words_for(const SolvedVariant& solved, const Year& year);

}  // namespace quoin::tools
