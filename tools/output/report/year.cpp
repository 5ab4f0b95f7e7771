// SPDX-License-Identifier: Apache-2.0
#include "tools/year.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "tools/answer/words/year_words.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::tools::report {
namespace {

std::vector<Column> month_columns(const Year& year) {
  std::vector<Column> columns{{"month", 1.2},        {"outside °C"},      {"outside %"},
                              {"outside vapour Pa"}, {"more inside Pa"},  {"inside °C"},
                              {"inside %"},          {"inside vapour Pa"}};
  for (const YearOfCriterion& judged : year.criteria) {
    columns.push_back({judged.criterion + ": saturation pressure needed Pa", 1.4});
    columns.push_back({judged.criterion + ": surface from °C", 1.3});
    columns.push_back({judged.criterion + ": fRsi needed", 1.2});
  }
  columns.push_back({"coldest spot °C"});
  columns.push_back({"humidity there %", 1.1});
  return columns;
}

/// The factor a month needs; where a surface as cold as outside would do, that is said.
Cell factor_cell(double needed, Tone tone) {
  if (needed <= 0.0) return figure_cell("any", tone);
  return needed > 1.0 ? figure_cell("none has it", tone) : number_cell(needed, 3, tone);
}

Row month_row(const Year& year, std::size_t month) {
  const MonthAir& air = year.months[month];
  Row row{words_cell(month_name(month)),
          number_cell(air.outside_temperature, 1),
          number_cell(100 * air.outside_humidity, 0),
          number_cell(air.outside_pressure, 0),
          number_cell(air.inside_pressure - air.outside_pressure, 0),
          number_cell(air.inside_temperature, 1),
          number_cell(100 * air.inside_humidity, 0),
          number_cell(air.inside_pressure, 0)};
  for (const YearOfCriterion& judged : year.criteria) {
    const auto& at_risk = judged.months_at_risk.front();
    const bool risk = std::find(at_risk.begin(), at_risk.end(), month) != at_risk.end();
    row.push_back(number_cell(saturation_pressure_needed(judged, month), 0));
    row.push_back(number_cell(judged.lowest_temperature[month], 1, risk ? Tone::bad : Tone::plain));
    row.push_back(factor_cell(judged.monthly_factor_needed[month],
                              month == judged.critical_month ? Tone::strong : Tone::plain));
  }
  row.push_back(number_cell(year.spots.front().temperature[month], 1));
  row.push_back(number_cell(100 * year.spots.front().humidity[month], 0));
  return row;
}

std::vector<Row> month_rows(const Year& year) {
  std::vector<Row> rows;
  for (std::size_t month = 0; month < year.months.size(); ++month)
    rows.push_back(month_row(year, month));
  return rows;
}

}  // namespace

Blocks year_part(const Results& results) {
  Blocks blocks;
  std::vector<Row> shown;  // the months shown last: variants with the same year share them
  for (const SolvedVariant& solved : results.variants) {
    for (const Year& year : solved.years) {
      if (year.spots.empty()) continue;
      const cases::Climate& climate = *solved.variant.climate;
      if (blocks.empty() && !climate.source.empty())
        blocks.emplace_back(Paragraph{"Climate: " + climate.source + "."});
      if (blocks.empty() && !climate.table.empty())
        blocks.emplace_back(
            Paragraph{fmt::format("Table: {}, SHA-256 {}.", climate.table, climate.sha256)});
      const std::string whose =
          fmt::format("{}, {}", solved.variant.name, solved.variant.spaces[year.air].name);
      blocks.emplace_back(Paragraph{fmt::format("{}: {}", whose, words_for(solved, year))});
      std::vector<Row> rows = month_rows(year);
      if (rows == shown) continue;
      shown = rows;
      add(blocks,
          {fmt::format("{}, month by month. Marked: at risk; the month that needs most.", whose),
           month_columns(year), std::move(rows), 1});
    }
  }
  return blocks;
}

}  // namespace quoin::tools::report
