// SPDX-License-Identifier: Apache-2.0
#include "tools/pdf_vapour.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

#include "tools/vapour_words.hpp"

namespace quoin::tools {
namespace {

void add_ledger(PageFlow& flow, const SolvedVariant& solved) {
  const DryingLedger& ledger = *solved.drying;
  if (ledger.rows.empty()) return;
  const bool inner = !ledger.rows.front().inside_coat.empty();
  std::vector<std::string> headings{"coat outside"};
  if (inner) headings.emplace_back("coat inside");
  for (const SpaceId air : ledger.airs) {
    headings.push_back(fmt::format("#to {} g/(m²·day)", solved.variant.spaces[air].name));
  }
  headings.emplace_back("#time");
  std::vector<std::vector<std::string>> rows;
  for (const DryingRow& row : ledger.rows) {
    std::vector<std::string> cells{row.outside_coat};
    if (inner) cells.push_back(row.inside_coat);
    for (const double out : row.out) cells.push_back(three_digits(grams_a_day(out)));
    cells.push_back(drying_time(row.seconds));
    rows.push_back(std::move(cells));
  }
  const std::vector<double> even(headings.size(), 1.0 / static_cast<double>(headings.size()));
  flow.table(headings, even, rows);
}

}  // namespace

void add_vapour(PageFlow& flow, const Results& results) {
  bool checked = false, dried = false;
  for (const SolvedVariant& solved : results.variants) {
    if (!solved.vapour) continue;
    if (!checked) flow.heading("Vapour within the section: no verdict");
    checked = true;
    flow.subheading(solved.variant.name);
    flow.paragraph(vapour_words(solved));
  }
  if (checked) flow.paragraph(vapour_left_out);
  for (const SolvedVariant& solved : results.variants) {
    if (!solved.drying) continue;
    if (!dried) flow.heading("Drying by diffusion alone");
    dried = true;
    flow.paragraph(drying_words(solved));
    add_ledger(flow, solved);
  }
  if (dried) flow.paragraph(drying_left_out);
}

}  // namespace quoin::tools
