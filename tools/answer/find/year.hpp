// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The year of every inside air whose humidity is known; empty where the case has no climate. Every
/// month is a weighted sum of the basis fields: no new solve.
[[nodiscard]] std::vector<Year> years_of(const SolvedVariant& solved);

/// The saturation pressure, Pa, that a surface needs in a month to pass: the pressure in the room
/// by the limit of the criterion.
[[nodiscard]] double saturation_pressure_needed(const YearOfCriterion& judged, std::size_t month);

/// "January" for 0.
[[nodiscard]] std::string_view month_name(std::size_t month);

}  // namespace quoin::tools
