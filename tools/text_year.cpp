// SPDX-License-Identifier: Apache-2.0
#include "tools/text_year.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <span>
#include <utility>

#include "cases/utf8.hpp"
#include "tools/year.hpp"

namespace quoin::tools {
namespace {

using Cell = TextTable::Cell;

Cell number(double value, int decimals) {
  return {std::isfinite(value) ? fmt::format("{:.{}f}", value + 0.0, decimals) : "-"};
}

std::string month_cell(std::size_t month) { return std::string(month_name(month).substr(0, 3)); }

/// The air on both sides, month by month.
std::string air_table(const Year& year, const TextStyle& style) {
  TextTable table("lrrrrrrr");
  table.add(
      {{"month"}, {"outside °C"}, {"%"}, {"Pa"}, {"excess Pa"}, {"inside °C"}, {"%"}, {"Pa"}});
  for (std::size_t month = 0; month < year.months.size(); ++month) {
    const MonthAir& air = year.months[month];
    table.add({{month_cell(month)},
               number(air.outside_temperature, 1),
               number(100 * air.outside_humidity, 0),
               number(air.outside_pressure, 0),
               number(air.inside_pressure - air.outside_pressure, 0),
               number(air.inside_temperature, 1),
               number(100 * air.inside_humidity, 0),
               number(air.inside_pressure, 0)});
  }
  return table.text(style);
}

using Criteria = std::span<const YearOfCriterion>;

/// What a surface needs by each of some criteria, and what the coldest spot has, month by month.
std::string needs_table(const Year& year, Criteria criteria, const TextStyle& style) {
  const std::size_t longest_name = criteria.size() == 1 ? 14 : 11;
  TextTable table("l" + std::string(3 * criteria.size() + 2, 'r'));
  std::vector<Cell> names{{"month"}}, units{{""}};
  for (const YearOfCriterion& judged : criteria) {
    names.push_back({cases::shortened(judged.criterion, longest_name)});
    names.insert(names.end(), 2, Cell{""});
    units.push_back({"psat Pa"});
    units.push_back({"from °C"});
    units.push_back({"fRsi"});
  }
  names.push_back({"coldest"});
  units.push_back({"°C"});
  units.push_back({"%"});
  table.add(std::move(names));
  table.add(std::move(units));
  const SpotYear& coldest = year.spots.front();
  for (std::size_t month = 0; month < year.months.size(); ++month) {
    std::vector<Cell> row{{month_cell(month)}};
    for (const YearOfCriterion& judged : criteria) {
      const auto& at_risk = judged.months_at_risk.front();
      const bool risk = std::find(at_risk.begin(), at_risk.end(), month) != at_risk.end();
      row.push_back(number(saturation_pressure_needed(judged, month), 0));
      row.push_back(number(judged.lowest_temperature[month], 1));
      row.back().tone = risk ? Tone::bad : Tone::plain;
      row.push_back(number(judged.monthly_factor_needed[month], 3));
      if (month == judged.critical_month) row.back().tone = Tone::strong;
    }
    row.push_back(number(coldest.temperature[month], 1));
    row.push_back(number(100 * coldest.humidity[month], 0));
    table.add(std::move(row));
  }
  return table.text(style);
}

/// Two criteria a table: more do not fit the width of a terminal.
std::string needs_tables(const Year& year, const TextStyle& style) {
  constexpr std::size_t most = 2;
  std::string text;
  for (Criteria rest = year.criteria; !rest.empty();) {
    const std::size_t now = std::min(most, rest.size());
    text += "\n" + needs_table(year, rest.first(now), style);
    rest = rest.subspan(now);
  }
  return text;
}

}  // namespace

std::string year_text(const Results& results, const TextStyle& style) {
  std::string text;
  std::string printed;  // the tables printed last: variants with the same year share them
  for (const SolvedVariant& solved : results.variants) {
    for (const Year& year : solved.years) {
      if (year.spots.empty()) continue;
      if (text.empty()) {
        text = "\n" + toned("Over the year", Tone::strong, style) + "\n";
        if (const std::string& source = solved.variant.climate->source; !source.empty())
          text += paragraph("Climate: " + source + ".", 2, style);
      }
      text += paragraph(fmt::format("{}, {}: {}", solved.variant.name,
                                    solved.variant.spaces[year.air].name, words_for(solved, year)),
                        2, style);
      const std::string tables = "\n" + air_table(year, style) + needs_tables(year, style);
      if (tables != printed) text += tables;
      printed = tables;
    }
  }
  return text;
}

}  // namespace quoin::tools
