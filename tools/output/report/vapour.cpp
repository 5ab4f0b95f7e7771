// SPDX-License-Identifier: Apache-2.0
#include <fmt/format.h>

#include <utility>

#include "tools/output/report/parts.hpp"
#include "tools/vapour_words.hpp"
#include "tools/year.hpp"

namespace quoin::tools::report {
namespace {

/// The water at each place at the end of each month.
Table months_table(const SolvedVariant& solved) {
  Table table{
      solved.variant.name + ": water at the end of each month", {{"where", 3}, {"in", 0.9}}, {}, 2};
  const VapourYear& year = *solved.vapour->year;
  if (!year.first) return table;
  for (std::size_t k = 0; k < 12; ++k)
    table.columns.push_back({std::string(month_name((*year.first + k) % 12).substr(0, 3)), 0.6});
  for (const WaterYear& place : year.places) {
    const bool line = place.length > 0.0;
    Row row{words_cell(words_for(solved, place.meeting, place.part)),
            words_cell(line ? "g/m²" : "g/m")};
    for (const double water : place.water)
      row.push_back(number_cell(1000.0 * water / (line ? place.length : 1.0), 0));
    table.rows.push_back(std::move(row));
  }
  return table;
}

Table drying_table(const SolvedVariant& solved) {
  const LedgerTable ledger = ledger_table(solved);
  Table table{solved.variant.name, {}, {}, ledger.coats.size()};
  for (const std::string& coat : ledger.coats) table.columns.push_back({coat, 2});
  for (const std::string& air : ledger.airs)
    table.columns.push_back({fmt::format("to {} g/(m²·day)", air), 1.2});
  table.columns.push_back({"time"});
  for (const std::vector<std::string>& cells : ledger.cells) {
    Row row;
    for (const std::string& cell : cells)
      row.push_back(row.size() < ledger.coats.size() ? words_cell(cell) : figure_cell(cell));
    table.rows.push_back(std::move(row));
  }
  return table;
}

}  // namespace

Blocks vapour_part(const Results& results) {
  Blocks checked, dried;
  for (const SolvedVariant& solved : results.variants) {
    if (solved.vapour) {
      if (checked.empty()) checked.emplace_back(Heading{"Vapour within the section: no verdict"});
      checked.emplace_back(Paragraph{solved.variant.name + ": " + vapour_words(solved)});
      if (solved.vapour->year) add(checked, months_table(solved));
    }
    if (solved.drying) {
      if (dried.empty()) dried.emplace_back(Heading{"Drying by diffusion alone"});
      dried.emplace_back(Paragraph{drying_words(solved)});
      add(dried, drying_table(solved));
    }
  }
  if (!checked.empty()) checked.emplace_back(Paragraph{std::string(vapour_left_out)});
  if (!dried.empty()) dried.emplace_back(Paragraph{std::string(drying_left_out)});
  checked.insert(checked.end(), dried.begin(), dried.end());
  return checked;
}

}  // namespace quoin::tools::report
