// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The verdict of a variant in plain words: for every inside air the humidity assumed, the coldest
/// spot, its limits and what it keeps of them. Needs humidity, verdicts and outcomes.
[[nodiscard]] std::string summary(const SolvedVariant& solved);

/// What a reader must know before trusting the numbers of a variant, each in plain words.
/// `cuts_told`: what its cut planes through masonry do is told elsewhere.
[[nodiscard]] std::vector<std::string> warnings(const SolvedVariant& solved, bool cuts_told);

}  // namespace quoin::tools
