// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "cases/grammar/csv.hpp"
#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// Which row of a table of a year, a heading and twelve rows, holds which month: by the column
/// `month` (January, Jan or 1), in the order of the rows where there is none. Absent with a fault
/// where a month is unknown, given twice or missing. Shape: January to December.
[[nodiscard]] std::optional<std::array<std::size_t, 12>> rows_of_months(
    const std::vector<std::vector<CsvCell>>& rows, FaultList& faults);

}  // namespace quoin::cases
