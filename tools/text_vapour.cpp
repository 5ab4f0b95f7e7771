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
  std::string text = paragraph(drying_words(solved), 2, style);
  const LedgerTable ledger = ledger_table(solved);
  if (ledger.cells.empty()) return text;
  const std::size_t coats = ledger.coats.size(), airs = ledger.airs.size();
  TextTable table(std::string(coats, 'l') + std::string(airs + 1, 'r'));
  std::vector<Cell> head{{"coat outside"}};
  if (coats > 1) head.push_back({"inside"});
  for (const std::string& air : ledger.airs) head.push_back({"to " + cases::shortened(air, 14)});
  head.push_back({"time"});
  table.add(std::move(head));
  std::vector<Cell> units(coats);
  units.resize(coats + airs, Cell{"g/(m²·day)"});
  table.add(std::move(units));
  for (const std::vector<std::string>& row : ledger.cells) {
    std::vector<Cell> cells;
    for (const std::string& cell : row) cells.push_back({cell});
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
