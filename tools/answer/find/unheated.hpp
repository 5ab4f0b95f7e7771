// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Gives unheated spaces that have losses the temperature at which their heat balance holds, by the
/// couplings of the heat-flow solution, and brings that solution to it.
void balance_unheated(SolvedVariant& solved);

/// The temperatures of unheated spaces that were not stated, with a blank before each sentence.
[[nodiscard]] std::string words_for_unheated(const SolvedVariant& solved);

}  // namespace quoin::tools
