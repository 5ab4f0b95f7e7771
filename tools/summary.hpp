// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/results.hpp"

namespace quoin::tools {

/// The verdict of a variant in plain words: for every inside air the humidity assumed, the coldest
/// spot, the margin and how sure it is. Needs humidity and verdicts to be filled in.
[[nodiscard]] std::string summary(const SolvedVariant& solved);

/// What a reader must know before trusting the numbers of a variant, each in plain words.
[[nodiscard]] std::vector<std::string> warnings(const SolvedVariant& solved);

}  // namespace quoin::tools
