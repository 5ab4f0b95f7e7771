// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Temperature and humidity at the timber ends that the recipe knows.
[[nodiscard]] std::vector<TimberEnd> timber_ends(const SolvedVariant& solved);

/// The same in plain words, to follow the summary; empty where there are none.
[[nodiscard]] std::string words_for_timber_ends(const SolvedVariant& solved);

}  // namespace quoin::tools
