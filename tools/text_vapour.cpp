// SPDX-License-Identifier: Apache-2.0
#include "tools/text_vapour.hpp"

#include <fmt/format.h>

#include <utility>

#include "cases/utf8.hpp"
#include "tools/vapour_words.hpp"

namespace quoin::tools {
namespace {

using Cell = TextTable::Cell;

std::string heading(std::string_view words, const TextStyle& style) {
  return "\n" + toned(words, Tone::strong, style) + "\n";
}

std::string ledger_text(const SolvedVariant& solved, const TextStyle& style) {
  const DryingLedger& ledger = *solved.drying;
  std::string text = paragraph(drying_words(solved), 2, style);
  if (ledger.rows.empty()) return text;
  std::string alignment = "l";
  std::vector<Cell> head{{"coat outside"}};
  const bool inner = !ledger.rows.front().inside_coat.empty();
  if (inner) {
    alignment += 'l';
    head.push_back({"inside"});
  }
  for (const SpaceId air : ledger.airs) {
    alignment += 'r';
    head.push_back({"to " + cases::shortened(solved.variant.spaces[air].name, 14)});
  }
  alignment += 'r';
  head.push_back({"time"});
  TextTable table(alignment);
  table.add(std::move(head));
  std::vector<Cell> units(inner ? 2 : 1);
  for (std::size_t a = 0; a < ledger.airs.size(); ++a) units.push_back({"g/(m²·day)"});
  table.add(std::move(units));
  for (const DryingRow& row : ledger.rows) {
    std::vector<Cell> cells{{row.outside_coat}};
    if (inner) cells.push_back({row.inside_coat});
    for (const double out : row.out) cells.push_back({three_digits(grams_a_day(out))});
    cells.push_back({drying_time(row.seconds)});
    table.add(std::move(cells));
  }
  return text + table.text(style);
}

}  // namespace

std::string vapour_text(const Results& results, const TextStyle& style) {
  std::string checked, dried;
  for (const SolvedVariant& solved : results.variants) {
    if (solved.vapour) {
      checked += paragraph(solved.variant.name + ": " + vapour_words(solved), 2, style);
    }
    if (solved.drying) dried += ledger_text(solved, style);
  }
  std::string text;
  if (!checked.empty()) {
    text += heading("Vapour within the section: no verdict", style) + checked +
            paragraph(vapour_left_out, 2, style);
  }
  if (!dried.empty()) {
    text +=
        heading("Drying by diffusion alone", style) + dried + paragraph(drying_left_out, 2, style);
  }
  return text;
}

}  // namespace quoin::tools
