// SPDX-License-Identifier: Apache-2.0
#include "tools/text_year.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "cases/utf8.hpp"
#include "tools/places.hpp"
#include "tools/year.hpp"

namespace quoin::tools {
namespace {

using Cell = TextTable::Cell;

Cell number(double value, int decimals) {
  return {std::isfinite(value) ? fmt::format("{:.{}f}", value + 0.0, decimals) : "-"};
}

/// "October to April, June": runs of months, over the turn of the year too.
std::string runs_of(const std::vector<std::size_t>& months) {
  if (months.size() == 12) return "all year";
  const auto has = [&](std::size_t month) {
    return std::find(months.begin(), months.end(), month % 12) != months.end();
  };
  std::string text;
  for (const std::size_t first : months) {
    if (has(first + 11)) continue;  // not the first of its run
    std::size_t last = first;
    while (has(last + 1)) ++last;
    text += (text.empty() ? "" : ", ") + std::string(month_name(first));
    if (last != first) text += fmt::format(" to {}", month_name(last % 12));
  }
  return text;
}

std::string criterion_words(const SolvedVariant& solved, const Year& year,
                            const YearOfCriterion& judged) {
  const SpotYear& coldest = year.spots.front();
  std::string text = fmt::format("{}: ", judged.criterion);
  if (std::isnan(judged.factor_needed)) return text + "it is never warmer inside than outside.";
  text +=
      fmt::format("{} needs most, fRsi {:.2f}; {} has {:.2f}", month_name(judged.critical_month),
                  judged.factor_needed, words_for(solved, coldest.spot), coldest.spot.factor.value);
  const std::vector<std::size_t>& months = judged.months_at_risk.front();
  if (months.empty()) return text + " and is safe all year.";
  text += months.size() == 12 ? " and is at risk all year"
                              : fmt::format(" and is at risk in {} of 12 months, {}", months.size(),
                                            runs_of(months));
  for (std::size_t s = 1; s < year.spots.size(); ++s) {
    if (judged.months_at_risk[s].empty()) continue;
    text += fmt::format("; {} in {}", words_for(solved, year.spots[s].spot),
                        judged.months_at_risk[s].size());
  }
  return text + ".";
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

/// What a surface needs by each criterion, and what the coldest spot has, month by month.
std::string needs_table(const Year& year, const TextStyle& style) {
  TextTable table("l" + std::string(2 * year.criteria.size() + 2, 'r'));
  std::vector<Cell> names{{"month"}}, units{{""}};
  for (const YearOfCriterion& judged : year.criteria) {
    names.push_back({cases::shortened(judged.criterion, 14)});
    names.push_back({""});
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
    for (const YearOfCriterion& judged : year.criteria) {
      const auto& at_risk = judged.months_at_risk.front();
      const bool risk = std::find(at_risk.begin(), at_risk.end(), month) != at_risk.end();
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

}  // namespace

std::string words_for(const SolvedVariant& solved, const Year& year) {
  std::string text;
  for (const YearOfCriterion& judged : year.criteria)
    text += (text.empty() ? "" : " ") + criterion_words(solved, year, judged);
  return text;
}

std::string year_text(const Results& results, const TextStyle& style) {
  std::string text;
  std::string printed;  // the tables printed last: variants with the same year share them
  for (const SolvedVariant& solved : results.variants) {
    for (const Year& year : solved.years) {
      if (year.spots.empty() || year.criteria.empty()) continue;
      if (text.empty()) {
        text = "\n" + toned("Over the year", Tone::strong, style) + "\n";
        if (const std::string& source = solved.variant.climate->source; !source.empty())
          text += paragraph("Climate: " + source + ".", 2, style);
      }
      text += paragraph(fmt::format("{}, {}: {}", solved.variant.name,
                                    solved.variant.spaces[year.air].name, words_for(solved, year)),
                        2, style);
      const std::string tables = "\n" + air_table(year, style) + "\n" + needs_table(year, style);
      if (tables != printed) text += tables;
      printed = tables;
    }
  }
  return text;
}

}  // namespace quoin::tools
