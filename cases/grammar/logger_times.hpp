// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string_view>

#include "cases/grammar/history_table.hpp"

namespace quoin::cases {

/// The numbers of a time as it is written, the day in the order of the text.
struct WrittenTime {
  int first = 0, second = 0, third = 0;  ///< of the day
  bool year_first = false;               ///< the first has four digits
  double hours = 0.0;                    ///< of the day, seconds included
};

/// "2026-01-28T07:00", "28/01/2026 07:00:00", "01/28/26 7:00 PM"; nothing where it is none of them.
/// A zone behind the time is read over.
[[nodiscard]] std::optional<WrittenTime> written_time_of(std::string_view text);

/// Hours since a fixed day; nothing where there is no such day. Two digits mean a year after 2000.
[[nodiscard]] std::optional<double> hours_of(const WrittenTime& time, DateOrder order);

}  // namespace quoin::cases
