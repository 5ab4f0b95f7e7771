// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What the months of a climate leave out or keep from the case as stated: a clear sky,
/// evaporation, and a year that nothing could be said of. In plain words.
[[nodiscard]] std::vector<std::string> year_remarks(const SolvedVariant& solved);

}  // namespace quoin::tools
