// SPDX-License-Identifier: Apache-2.0
#include "tools/enough_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

namespace quoin::tools {
namespace {

using Cell = EnoughTable::Cell;

/// A threshold in a cell; the others print one of each kind.
template <class Found, class Always, class Never>
Cell cell_of(const std::optional<Threshold>& threshold, Found found, Always always, Never never) {
  if (!threshold) return {};
  const double value = threshold->value;
  switch (threshold->kind) {
    case Threshold::Kind::found:
      return {found(value), threshold->kind};
    case Threshold::Kind::holds_always:
      return {always(value), threshold->kind};
    case Threshold::Kind::holds_never:
      return {never(value), threshold->kind};
    case Threshold::Kind::up_to_damp:
      return {fmt::format("{}, damp", found(value)), threshold->kind};
    case Threshold::Kind::dry_first:
      return {"dry first", threshold->kind};
  }
  return {};
}

Cell thickness_cell(const std::optional<Threshold>& thickness) {
  return cell_of(
      thickness, [](double value) { return fmt::format("{:.0f} mm", std::ceil(1e3 * value)); },
      [](double value) { return fmt::format("{:.0f} mm", 1e3 * value); },
      [](double value) { return fmt::format("over {:.0f} mm", 1e3 * value); });
}

Cell moisture_cell(const std::optional<Threshold>& moisture) {
  return cell_of(
      moisture,
      // What is left after rounding down: 10 % must not become 9.9 %.
      [](double value) { return fmt::format("{:.1f} vol-%", std::floor(1e3 * value + 1e-9) / 10); },
      [](double) { return std::string("any"); },
      [](double) { return std::string("not even dry"); });
}

/// What the variants of a case ask for, each material once, in the order of the variants.
struct Asked {
  std::vector<std::string> thickness, moisture;
};

void add_once(std::vector<std::string>& list, const std::string& name) {
  if (std::find(list.begin(), list.end(), name) == list.end()) list.push_back(name);
}

Asked asked_by(const std::vector<SolvedVariant>& variants) {
  Asked asked;
  for (const SolvedVariant& solved : variants) {
    const cases::Enough& enough = solved.variant.enough;
    if (enough.thickness) add_once(asked.thickness, enough.thickness->of);
    if (!enough.moisture_of.empty()) add_once(asked.moisture, enough.moisture_of);
  }
  return asked;
}

/// `own`: what the variant itself asks for.
std::vector<Cell> cells_of(const EnoughFor& enough, const cases::Enough& own, const Asked& asked) {
  std::vector<Cell> cells(2);
  if (enough.highest_humidity) {
    cells[0].words = *enough.highest_humidity >= 1.0
                         ? "any"
                         : fmt::format("{:.0f} %", std::floor(100 * *enough.highest_humidity));
  }
  if (enough.lowest_temperature)
    cells[1].words = fmt::format("{:.1f} °C", std::ceil(10 * *enough.lowest_temperature) / 10);
  for (const std::string& of : asked.thickness) {
    const bool is_own = own.thickness && own.thickness->of == of;
    cells.push_back(is_own ? thickness_cell(enough.thickness) : Cell{});
  }
  for (const std::string& of : asked.moisture)
    cells.push_back(own.moisture_of == of ? moisture_cell(enough.moisture) : Cell{});
  return cells;
}

}  // namespace

EnoughTable enough_table(const Results& results) {
  EnoughTable table;
  if (results.variants.empty()) return table;
  const Asked asked = asked_by(results.variants);
  table.columns = {{"humidity", "up to"}, {"room", "from"}};
  for (const std::string& of : asked.thickness) table.columns.push_back({of, "from"});
  for (const std::string& of : asked.moisture) table.columns.push_back({of, "up to"});
  for (const SolvedVariant& solved : results.variants) {
    for (const EnoughFor& enough : solved.enough) {
      if (!enough.highest_humidity && !enough.thickness && !enough.moisture) continue;
      table.rows.push_back({solved.variant.name, solved.variant.spaces[enough.space].name,
                            enough.criterion, cells_of(enough, solved.variant.enough, asked)});
    }
  }
  return table;
}

}  // namespace quoin::tools
