// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/results.hpp"

namespace quoin::tools {

/// The year of every inside air whose humidity is known; empty where the case has no climate. Every
/// month is a weighted sum of the basis fields: no new solve.
[[nodiscard]] std::vector<Year> years_of(const SolvedVariant& solved);

/// "January" for 0.
[[nodiscard]] std::string_view month_name(std::size_t month);

}  // namespace quoin::tools
