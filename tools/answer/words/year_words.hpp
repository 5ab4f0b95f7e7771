// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/results.hpp"

namespace quoin::tools {

/// What the year asks of a room and what its cold spots have, in plain words. The year has cold
/// spots.
[[nodiscard]] std::string words_for(const SolvedVariant& solved, const Year& year);

}  // namespace quoin::tools
