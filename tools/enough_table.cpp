// SPDX-License-Identifier: Apache-2.0
#include "tools/enough_table.hpp"

#include <fmt/format.h>

#include <cmath>
#include <optional>

namespace quoin::tools {
namespace {

using Cell = EnoughTable::Cell;

/// A threshold in a cell; `shown` prints a found one.
template <class Shown>
Cell cell_of(const std::optional<Threshold>& threshold, Shown shown, const std::string& always,
             const std::string& never) {
  if (!threshold) return {};
  switch (threshold->kind) {
    case Threshold::Kind::found:
      return {shown(threshold->value), threshold->kind};
    case Threshold::Kind::holds_always:
      return {always, threshold->kind};
    case Threshold::Kind::holds_never:
      return {never, threshold->kind};
  }
  return {};
}

std::vector<Cell> cells_of(const EnoughFor& enough, const cases::Enough& asked) {
  std::vector<Cell> cells(2);
  if (enough.highest_humidity) {
    cells[0].words = *enough.highest_humidity >= 1.0
                         ? "any"
                         : fmt::format("{:.0f} %", std::floor(100 * *enough.highest_humidity));
  }
  if (enough.lowest_temperature)
    cells[1].words = fmt::format("{:.1f} °C", std::ceil(10 * *enough.lowest_temperature) / 10);
  if (asked.thickness) {
    cells.push_back(cell_of(
        enough.thickness,
        [](double value) { return fmt::format("{:.0f} mm", std::ceil(1e3 * value)); },
        fmt::format("{:.0f} mm", 1e3 * asked.thickness->from),
        fmt::format("over {:.0f} mm", 1e3 * asked.thickness->to)));
  }
  if (!asked.moisture_of.empty()) {
    cells.push_back(cell_of(
        enough.moisture,
        [](double value) { return fmt::format("{:.1f} vol-%", std::floor(1e3 * value) / 10); },
        "any", "not even dry"));
  }
  return cells;
}

}  // namespace

EnoughTable enough_table(const Results& results) {
  EnoughTable table;
  if (results.variants.empty()) return table;
  const cases::Enough& asked = results.variants.front().variant.enough;
  table.columns = {{"humidity", "up to"}, {"room", "from"}};
  if (asked.thickness) table.columns.push_back({asked.thickness->of, "from"});
  if (!asked.moisture_of.empty()) table.columns.push_back({asked.moisture_of, "up to"});
  for (const SolvedVariant& solved : results.variants) {
    for (const EnoughFor& enough : solved.enough) {
      if (!enough.highest_humidity && !enough.thickness && !enough.moisture) continue;
      table.rows.push_back({solved.variant.name, solved.variant.spaces[enough.space].name,
                            enough.criterion, cells_of(enough, asked)});
    }
  }
  return table;
}

}  // namespace quoin::tools
