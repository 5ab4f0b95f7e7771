// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// How a table writes the day in its times.
enum class DateOrder : std::uint8_t { year_first, day_first, month_first };

/// What is wanted of a table of temperatures in time.
struct HistoryQuestion {
  std::vector<std::string> columns;  ///< names that the column may have, the best first
  std::optional<DateOrder> dates;    ///< absent: told by the table itself, where only one fits
  std::string read_at;               ///< the time of the readings; empty: the last row
};

/// The temperatures of a table on each full hour before the readings, the hour of the readings
/// first, on straight lines between its rows, degC. Tables are read as loggers write them: commas,
/// semicolons or tabs between columns, quotes, units in brackets behind a column's name, blanks,
/// lines of remarks above the heading, decimal commas where semicolons or tabs separate.
/// Faults: no such column, rows that do not fit, times out of order or not to be told, values that
/// are no temperatures, gaps of more than three hours.
[[nodiscard]] std::vector<double> hourly_history(std::string_view text,
                                                 const HistoryQuestion& question,
                                                 FaultList& faults);

}  // namespace quoin::cases
