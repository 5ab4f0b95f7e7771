// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>

#include "tools/enough_table.hpp"
#include "tools/html_parts.hpp"
#include "tools/html_verdicts.hpp"
#include "tools/text_year.hpp"
#include "tools/year.hpp"

namespace quoin::tools {
namespace {

std::vector<std::string> year_headings(const Year& year) {
  std::vector<std::string> headings{"month",     "outside °C", "%", "vapour Pa",
                                    "excess Pa", "inside °C",  "%", "Pa"};
  for (const YearOfCriterion& judged : year.criteria) {
    headings.push_back(judged.criterion + ": saturation Pa");
    headings.emplace_back("surface from °C");
    headings.emplace_back("fRsi needed");
  }
  headings.insert(headings.end(), {"coldest spot °C", "humidity there %"});
  return headings;
}

HtmlRow month_row(const Year& year, std::size_t month) {
  const MonthAir& air = year.months[month];
  HtmlRow row{text_cell(month_name(month)),
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
    const HtmlCell lowest = number_cell(judged.lowest_temperature[month], 1);
    row.push_back(risk ? strong(lowest) : lowest);
    const HtmlCell needed = number_cell(judged.monthly_factor_needed[month], 3);
    row.push_back(month == judged.critical_month ? strong(needed) : needed);
  }
  row.push_back(number_cell(year.spots.front().temperature[month], 1));
  row.push_back(number_cell(100 * year.spots.front().humidity[month], 0));
  return row;
}

std::string months_table(std::string_view whose, const Year& year) {
  std::vector<HtmlRow> rows;
  for (std::size_t month = 0; month < year.months.size(); ++month)
    rows.push_back(month_row(year, month));
  return html_table(
      fmt::format("{}, month by month. Bold: at risk; the month that needs most.", whose),
      year_headings(year), rows);
}

}  // namespace

std::string html_year(const Results& results) {
  std::string text;
  std::string shown;  // the months shown last: variants with the same year share them
  for (const SolvedVariant& solved : results.variants) {
    for (const Year& year : solved.years) {
      if (year.spots.empty()) continue;
      const cases::Climate& climate = *solved.variant.climate;
      if (text.empty() && !climate.source.empty())
        text += html_paragraph("Climate: " + climate.source + ".");
      if (text.empty() && !climate.table.empty())
        text +=
            html_paragraph(fmt::format("Table: {}, SHA-256 {}.", climate.table, climate.sha256));
      const std::string whose =
          fmt::format("{}, {}", solved.variant.name, solved.variant.spaces[year.air].name);
      text += html_paragraph(fmt::format("{}: {}", whose, words_for(solved, year)));
      const std::string months = months_table("", year);
      if (months != shown) text += months_table(whose, year);
      shown = months;
    }
  }
  return text;
}

std::string html_enough(const Results& results) {
  const EnoughTable enough = enough_table(results);
  std::vector<std::string> headings{"variant", "room", "criterion"};
  for (const EnoughTable::Column& column : enough.columns)
    headings.push_back(fmt::format("{} {}", column.what, column.way));
  std::vector<HtmlRow> rows;
  for (const EnoughTable::Row& row : enough.rows) {
    rows.push_back({text_cell(row.variant), text_cell(row.room), text_cell(row.criterion)});
    for (const EnoughTable::Cell& cell : row.cells)
      rows.back().push_back(digits_cell(cell.words.empty() ? "–" : cell.words));
  }
  return html_table(enough_note, headings, rows);
}

}  // namespace quoin::tools
