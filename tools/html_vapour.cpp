// SPDX-License-Identifier: Apache-2.0
#include "tools/html_vapour.hpp"

#include <fmt/format.h>

#include "tools/html_parts.hpp"
#include "tools/vapour_words.hpp"
#include "tools/year.hpp"

namespace quoin::tools {
namespace {

/// The water at each place at the end of each month.
std::string months_table(const SolvedVariant& solved) {
  const VapourYear& year = *solved.vapour->year;
  if (!year.first) return "";
  std::vector<std::string> headings{"water at the end of", ""};
  for (std::size_t k = 0; k < 12; ++k)
    headings.emplace_back(month_name((*year.first + k) % 12).substr(0, 3));
  std::vector<HtmlRow> rows;
  for (const WaterYear& place : year.places) {
    const bool line = place.length > 0.0;
    HtmlRow row{text_cell(words_for(solved, place.meeting, place.part)),
                text_cell(line ? "g/m²" : "g/m")};
    for (const double water : place.water)
      row.push_back(number_cell(1000.0 * water / (line ? place.length : 1.0), 0));
    rows.push_back(std::move(row));
  }
  return html_table(solved.variant.name, headings, rows);
}

std::string ledger_html(const SolvedVariant& solved) {
  const LedgerTable ledger = ledger_table(solved);
  if (ledger.cells.empty()) return "";
  std::vector<std::string> headings = ledger.coats;
  for (const std::string& air : ledger.airs)
    headings.push_back(fmt::format("to {} g/(m²·day)", air));
  headings.emplace_back("time");
  std::vector<HtmlRow> rows;
  for (const std::vector<std::string>& cells : ledger.cells) {
    HtmlRow row;
    for (const std::string& cell : cells)
      row.push_back(row.size() < ledger.coats.size() ? text_cell(cell) : digits_cell(cell));
    rows.push_back(std::move(row));
  }
  return html_table(solved.variant.name, headings, rows);
}

}  // namespace

std::string vapour_html(const Results& results) {
  std::string checked, dried;
  for (const SolvedVariant& solved : results.variants) {
    if (solved.vapour) {
      checked += html_paragraph(solved.variant.name + ": " + vapour_words(solved));
      if (solved.vapour->year) checked += months_table(solved);
    }
    if (solved.drying) dried += html_paragraph(drying_words(solved)) + ledger_html(solved);
  }
  std::string text;
  if (!checked.empty()) {
    text += "<h3>Vapour within the section: no verdict</h3>\n" + checked +
            html_paragraph(vapour_left_out);
  }
  if (!dried.empty())
    text += "<h3>Drying by diffusion alone</h3>\n" + dried + html_paragraph(drying_left_out);
  return text;
}

}  // namespace quoin::tools
