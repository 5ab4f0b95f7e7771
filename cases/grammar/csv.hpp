// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>
#include <vector>

#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// One value of a table and where it stands.
struct CsvCell {
  std::string_view text;  ///< without blanks at its ends
  Mark mark;
};

/// The rows of a text of comma-separated values, the heading first. Empty lines and lines that
/// begin with # are left out. The text must outlive the rows.
[[nodiscard]] std::vector<std::vector<CsvCell>> csv_rows(std::string_view text);

/// Whether commas separate the columns and every row has as many values as the heading; a fault for
/// the first row where not.
[[nodiscard]] bool rows_fit(const std::vector<std::vector<CsvCell>>& rows, FaultList& faults);

}  // namespace quoin::cases
