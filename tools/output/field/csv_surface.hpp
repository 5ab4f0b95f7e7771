// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The temperature along every inside surface of every variant, a row a node, as CSV text after RFC
/// 4180 with a line of headings. Where a value does not exist its cell is empty.
[[nodiscard]] std::string surface_csv(const Results& results);

/// One text as a CSV cell: harmless to a terminal (see text_table.hpp), in one line, quoted where
/// needed; text that a spreadsheet might run as a formula begins with an apostrophe.
[[nodiscard]] std::string csv_cell(std::string_view text);

}  // namespace quoin::tools
