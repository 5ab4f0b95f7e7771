// SPDX-License-Identifier: Apache-2.0
#include "tools/text_enough.hpp"

#include <fmt/format.h>

#include "cases/utf8.hpp"
#include "tools/enough_table.hpp"

namespace quoin::tools {
namespace {

using Cell = TextTable::Cell;

Tone tone_of(Threshold::Kind kind) {
  switch (kind) {
    case Threshold::Kind::found:
      return Tone::plain;
    case Threshold::Kind::holds_always:
      return Tone::good;
    case Threshold::Kind::up_to_damp:
      return Tone::good;
    case Threshold::Kind::dry_first:
      return Tone::doubtful;
    case Threshold::Kind::holds_never:
      return Tone::bad;
  }
  return Tone::plain;
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
    case Threshold::Kind::up_to_damp:
      return "up to damp";
    case Threshold::Kind::dry_first:
      return "dry first";
  }
  return "";
}

std::string enough_text(const Results& results, const TextStyle& style) {
  const EnoughTable enough = enough_table(results);
  if (enough.rows.empty()) return "";
  TextTable table("ll" + std::string(enough.columns.size(), 'r'));
  std::vector<Cell> what{{"variant"}, {"criterion"}}, way{{""}, {""}};
  for (const EnoughTable::Column& column : enough.columns) {
    what.push_back({cases::shortened(column.what, 18)});
    way.push_back({std::string(column.way)});
  }
  table.add(std::move(what));
  table.add(std::move(way));
  std::string_view last;  // a variant is named once
  for (const EnoughTable::Row& row : enough.rows) {
    std::vector<Cell> cells{{row.variant == last ? "" : row.variant},
                            {cases::shortened(row.criterion, 20)}};
    for (const EnoughTable::Cell& cell : row.cells)
      cells.push_back({cell.words.empty() ? "-" : cell.words, tone_of(cell.kind)});
    table.add(std::move(cells));
    last = row.variant;
  }
  return "\n" + toned("What would be enough", Tone::strong, style) + "\n" + table.text(style) +
         paragraph(enough_note, 2, style);
}

}  // namespace quoin::tools
