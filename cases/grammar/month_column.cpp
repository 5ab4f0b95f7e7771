// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/month_column.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cctype>
#include <string>

#include "cases/grammar/month_names.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

bool same_letters(std::string_view one, std::string_view other) {
  return std::equal(one.begin(), one.end(), other.begin(), other.end(), [](char a, char b) {
    return std::tolower(static_cast<unsigned char>(a)) ==
           std::tolower(static_cast<unsigned char>(b));
  });
}

/// 0 for "January", "jan", "1" and "01".
std::optional<std::size_t> month_of(std::string_view text) {
  for (std::size_t month = 0; month < month_names.size(); ++month) {
    const std::string_view name = month_names[month];
    if (same_letters(text, name) || same_letters(text, name.substr(0, 3)) ||
        text == fmt::format("{}", month + 1) || text == fmt::format("{:02}", month + 1))
      return month;
  }
  return std::nullopt;
}

void say_unknown(const CsvCell& cell, FaultList& faults) {
  const std::string near =
      nearest(std::string(cell.text), {month_names.begin(), month_names.end()});
  faults.add(cell.mark,
             {fmt::format("no month is called '{}'", cell.text), std::string(cell.text),
              "January, Jan or 1",
              near.empty() ? "or remove the column `month`: the rows are then January to December"
                           : fmt::format("did you mean '{}'?", near)});
}

}  // namespace

std::optional<std::array<std::size_t, 12>> rows_of_months(
    const std::vector<std::vector<CsvCell>>& rows, FaultList& faults) {
  const auto& heading = rows.front();
  const auto found = std::find_if(heading.begin(), heading.end(),
                                  [](const CsvCell& cell) { return cell.text == "month"; });
  std::array<std::size_t, 12> order{};  // 0, the heading: not met yet
  if (found == heading.end()) {
    for (std::size_t month = 0; month < order.size(); ++month) order[month] = month + 1;
    return order;
  }
  const auto column = static_cast<std::size_t>(found - heading.begin());
  std::vector<const CsvCell*> again;
  bool known = true;
  for (std::size_t row = 1; row < rows.size(); ++row) {
    const CsvCell& cell = rows[row][column];
    const std::optional<std::size_t> month = month_of(cell.text);
    if (!month) {
      say_unknown(cell, faults);
      known = false;
    } else if (order[*month] != 0) {
      again.push_back(&cell);
    } else {
      order[*month] = row;
    }
  }
  std::vector<std::string> missing;
  for (std::size_t month = 0; month < order.size(); ++month) {
    if (order[month] == 0) missing.emplace_back(month_names[month]);
  }
  for (const CsvCell* cell : again) {
    faults.add(cell->mark, {fmt::format("{} is given twice", month_names[*month_of(cell->text)]),
                            std::string(cell->text), "each month once",
                            known ? fmt::format("missing: {}", joined(missing, ", ")) : ""});
  }
  if (!missing.empty()) return std::nullopt;
  return order;
}

}  // namespace quoin::cases
