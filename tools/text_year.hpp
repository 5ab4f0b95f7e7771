// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/results.hpp"
#include "tools/text_table.hpp"

namespace quoin::tools {

/// The years of all variants: in words, then the table of ISO 13788 in full, once for variants in a
/// row that share it. Empty where the case has no climate.
[[nodiscard]] std::string year_text(const Results& results, const TextStyle& style);

/// The year of one air in words: for each criterion the critical month, the factor it needs, the
/// factor of the coldest spot and its months at risk.
[[nodiscard]] std::string words_for(const SolvedVariant& solved, const Year& year);

}  // namespace quoin::tools
