// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/csv.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cases/grammar/quantity.hpp"
#include "cases/text/plain_text.hpp"

namespace quoin::cases {
namespace {

std::vector<CsvCell> cells_of(std::string_view line, std::size_t number) {
  std::vector<CsvCell> cells;
  for (std::size_t start = 0; start <= line.size();) {
    const std::size_t end = std::min(line.find(',', start), line.size());
    const std::string_view whole = line.substr(start, end - start);
    const std::string_view text = trimmed(whole);
    const auto lead = text.empty() ? 0 : static_cast<std::size_t>(text.data() - whole.data());
    cells.push_back({text, {number, start + lead + 1}});
    start = end + 1;
  }
  return cells;
}

}  // namespace

std::vector<std::vector<CsvCell>> csv_rows(std::string_view text) {
  std::vector<std::vector<CsvCell>> rows;
  std::size_t number = 0;
  for (const std::string_view line : lines_of(without_byte_order_mark(text))) {
    ++number;
    const std::string_view shown = trimmed(line);
    if (!shown.empty() && shown[0] != '#') rows.push_back(cells_of(line, number));
  }
  return rows;
}

bool rows_fit(const std::vector<std::vector<CsvCell>>& rows, FaultList& faults) {
  if (!rows.empty() && rows.front().size() == 1) {
    const CsvCell& heading = rows.front().front();
    const std::size_t other = heading.text.find_first_of(";\t");
    if (other != std::string_view::npos) {
      faults.add({heading.mark.line, heading.mark.byte + other},
                 {fmt::format("{} separate the columns of this table",
                              heading.text[other] == ';' ? "semicolons" : "tabs"),
                  std::string(heading.text), "commas between columns, points before decimals",
                  "save the table as CSV with commas and points"});
      return false;
    }
  }
  for (const auto& row : rows) {
    if (row.size() == rows.front().size()) continue;
    faults.add(
        row.front().mark,
        {"this row has another number of values than the heading",
         fmt::format("{} values", row.size()),
         fmt::format("{} values, commas between them, points before decimals", rows.front().size()),
         ""});
    return false;
  }
  return true;
}

}  // namespace quoin::cases
