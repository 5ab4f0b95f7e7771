// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/output/report.hpp"
#include "tools/text_table.hpp"

namespace quoin::tools {

/// A table of the report for a terminal: cells are broken at spaces where their column is too wide,
/// and where all columns do not fit beside each other the rest follow below, led by the first ones.
/// Where the terminal is wide enough each row is one line. Empty without rows.
[[nodiscard]] std::string table_text(const report::Table& table, const TextStyle& style);

}  // namespace quoin::tools
