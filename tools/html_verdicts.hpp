// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/results.hpp"

namespace quoin::tools {

/// What was found, for the report page. Each is the content of one section, empty where there is
/// nothing to say.

/// The verdict on each variant in plain words.
[[nodiscard]] std::string html_verdicts(const Results& results);
/// Coldest spots and criteria, variants side by side, and what changes.
[[nodiscard]] std::string html_side_by_side(const Results& results);
/// What would be enough, a row for each variant, room and criterion.
[[nodiscard]] std::string html_enough(const Results& results);
/// The year in words and by month.
[[nodiscard]] std::string html_year(const Results& results);
/// What was read on site beside the model.
[[nodiscard]] std::string html_readings(const Results& results);
/// L2D with its bounds, linear transmittances, and the plain parts.
[[nodiscard]] std::string html_heat(const Results& results);

}  // namespace quoin::tools
