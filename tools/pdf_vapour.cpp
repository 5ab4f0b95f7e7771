// SPDX-License-Identifier: Apache-2.0
#include "tools/pdf_vapour.hpp"

#include <fmt/format.h>

#include <string>
#include <vector>

#include "tools/vapour_words.hpp"

namespace quoin::tools {
namespace {

void add_ledger(PageFlow& flow, const SolvedVariant& solved) {
  const LedgerTable ledger = ledger_table(solved);
  if (ledger.cells.empty()) return;
  std::vector<std::string> headings = ledger.coats;
  for (const std::string& air : ledger.airs) {
    headings.push_back(fmt::format("#to {} g/(m²·day)", air));
  }
  headings.emplace_back("#time");
  const std::vector<double> even(headings.size(), 1.0 / static_cast<double>(headings.size()));
  flow.table(headings, even, ledger.cells);
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
