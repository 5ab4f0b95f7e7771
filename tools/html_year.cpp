// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

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
    headings.push_back(judged.criterion + ": surface from °C");
    headings.push_back("fRsi needed");
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

/// A threshold in a cell; `shown` prints a found one.
template <class Shown>
HtmlCell threshold_cell(const std::optional<Threshold>& threshold, Shown shown,
                        const std::string& always, const std::string& never) {
  if (!threshold) return digits_cell("–");
  switch (threshold->kind) {
    case Threshold::Kind::found:
      return digits_cell(shown(threshold->value));
    case Threshold::Kind::holds_always:
      return digits_cell(always);
    case Threshold::Kind::holds_never:
      return digits_cell(never);
  }
  return digits_cell("–");
}

/// `asked`: of the first variant, which gives the columns.
HtmlRow enough_row(const SolvedVariant& solved, const EnoughFor& enough,
                   const cases::Enough& asked) {
  HtmlRow row{text_cell(solved.variant.name), text_cell(solved.variant.spaces[enough.space].name),
              text_cell(enough.criterion)};
  row.push_back(
      digits_cell(!enough.highest_humidity ? "–"
                  : *enough.highest_humidity >= 1.0
                      ? "any"
                      : fmt::format("{:.0f} %", std::floor(100 * *enough.highest_humidity))));
  row.push_back(
      digits_cell(enough.lowest_temperature
                      ? fmt::format("{:.1f} °C", std::ceil(10 * *enough.lowest_temperature) / 10)
                      : "–"));
  if (asked.thickness) {
    row.push_back(threshold_cell(
        enough.thickness,
        [](double value) { return fmt::format("{:.0f} mm", std::ceil(1e3 * value)); },
        fmt::format("{:.0f} mm", 1e3 * asked.thickness->from),
        fmt::format("over {:.0f} mm", 1e3 * asked.thickness->to)));
  }
  if (!asked.moisture_of.empty()) {
    row.push_back(threshold_cell(
        enough.moisture,
        [](double value) { return fmt::format("{:.1f} vol-%", std::floor(1e3 * value) / 10); },
        "any", "not even dry"));
  }
  return row;
}

}  // namespace

std::string html_year(const Results& results) {
  std::string text;
  std::string shown;  // the months shown last: variants with the same year share them
  for (const SolvedVariant& solved : results.variants) {
    for (const Year& year : solved.years) {
      if (year.spots.empty() || year.criteria.empty()) continue;
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
  const cases::Enough& asked = results.variants.front().variant.enough;
  std::vector<std::string> headings{"variant", "room", "criterion", "humidity up to", "room from"};
  if (asked.thickness) headings.push_back(asked.thickness->of + " from");
  if (!asked.moisture_of.empty()) headings.push_back(asked.moisture_of + " up to");
  std::vector<HtmlRow> rows;
  for (const SolvedVariant& solved : results.variants) {
    for (const EnoughFor& enough : solved.enough) {
      if (!enough.highest_humidity && !enough.thickness && !enough.moisture) continue;
      rows.push_back(enough_row(solved, enough, asked));
    }
  }
  return html_table("For each criterion to hold. The room from: with the vapour its air holds now.",
                    headings, rows);
}

}  // namespace quoin::tools
