// SPDX-License-Identifier: Apache-2.0
#include "tools/text_enough.hpp"

#include <fmt/format.h>

#include <cmath>
#include <utility>

#include "cases/utf8.hpp"

namespace quoin::tools {
namespace {

using Cell = TextTable::Cell;

/// A threshold in a cell; `shown` prints a found one, `always` and `never` the others.
template <class Shown>
Cell cell_of(const std::optional<Threshold>& threshold, Shown shown, const std::string& always,
             const std::string& never) {
  if (!threshold) return {"-"};
  switch (threshold->kind) {
    case Threshold::Kind::found:
      return {shown(threshold->value)};
    case Threshold::Kind::holds_always:
      return {always, Tone::good};
    case Threshold::Kind::holds_never:
      return {never, Tone::bad};
  }
  return {"-"};
}

std::vector<Cell> row_of(std::string name, const SolvedVariant& solved, const EnoughFor& enough) {
  const cases::Enough& asked = solved.variant.enough;
  std::vector<Cell> row{
      {std::move(name)},
      {cases::shortened(enough.criterion, 20)},
      {enough.highest_humidity
           ? (*enough.highest_humidity >= 1.0
                  ? "any"
                  : fmt::format("{:.0f} %", std::floor(100 * *enough.highest_humidity)))
           : "-"},
      {enough.lowest_temperature
           ? fmt::format("{:.1f} °C", std::ceil(10 * *enough.lowest_temperature) / 10)
           : "-"}};
  if (asked.thickness) {
    row.push_back(cell_of(
        enough.thickness,
        [](double value) { return fmt::format("{:.0f} mm", std::ceil(1e3 * value)); },
        fmt::format("{:.0f} mm", 1e3 * asked.thickness->from),
        fmt::format("over {:.0f} mm", 1e3 * asked.thickness->to)));
  }
  if (!asked.moisture_of.empty()) {
    row.push_back(cell_of(
        enough.moisture,
        [](double value) { return fmt::format("{:.1f} vol-%", std::floor(1e3 * value) / 10); },
        "any", "not even dry"));
  }
  return row;
}

}  // namespace

std::string_view words_for(Threshold::Kind kind) {
  switch (kind) {
    case Threshold::Kind::found:
      return "found";
    case Threshold::Kind::holds_always:
      return "holds always";
    case Threshold::Kind::holds_never:
      return "holds never";
  }
  return "";
}

std::string enough_text(const Results& results, const TextStyle& style) {
  if (results.variants.empty()) return "";
  const cases::Enough& asked = results.variants.front().variant.enough;
  TextTable table("llrrrr");
  std::vector<Cell> heading{{"variant"}, {"criterion"}, {"humidity up to"}, {"room from"}};
  if (asked.thickness) heading.push_back({cases::shortened(asked.thickness->of, 18) + " from"});
  if (!asked.moisture_of.empty())
    heading.push_back({cases::shortened(asked.moisture_of, 18) + " up to"});
  table.add(std::move(heading));
  bool any = false;
  for (const SolvedVariant& solved : results.variants) {
    std::string name = solved.variant.name;
    for (const EnoughFor& enough : solved.enough) {
      if (!enough.highest_humidity && !enough.thickness && !enough.moisture) continue;
      any = true;
      table.add(row_of(std::exchange(name, ""), solved, enough));
    }
  }
  if (!any) return "";
  return "\n" + toned("What would be enough", Tone::strong, style) + "\n" + table.text(style) +
         paragraph("The room from: with the vapour its air holds now.", 2, style);
}

}  // namespace quoin::tools
