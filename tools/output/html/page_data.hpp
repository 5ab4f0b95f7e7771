// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Grids larger than this are not shipped with the page: their fields are for a viewer.
inline constexpr std::size_t most_page_nodes = 150'000;

/// What the script of the report page needs to read off temperatures and to recompute verdicts, as
/// JSON that may stand within a script element: for each variant its finest grid of the
/// surface-temperature purpose, what each cell shows, a basis field for each air, spaces, cold
/// spots and criteria. Basis fields are 16-bit shares of one (an error of at most 0.00001 of the
/// difference of the spaces); that of the last air is what is left of one.
/// `limit`: variants with more nodes go without a field.
[[nodiscard]] std::string page_data(const Results& results, std::size_t limit = most_page_nodes);

}  // namespace quoin::tools
