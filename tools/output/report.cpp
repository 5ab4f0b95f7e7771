// SPDX-License-Identifier: Apache-2.0
#include "tools/output/report.hpp"

#include <algorithm>
#include <utility>

#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::tools::report {

void add(Blocks& blocks, Table table) {
  if (!table.rows.empty()) blocks.emplace_back(std::move(table));
}

std::vector<Row> rows_of(const SharedRows<Row>& shared, std::size_t variants) {
  std::vector<Row> rows;
  for (const auto& [names, row] : shared.rows(variants)) {
    rows.push_back({words_cell(names)});
    rows.back().insert(rows.back().end(), row.begin(), row.end());
  }
  return rows;
}

std::vector<Badge> badges_of(const SolvedVariant& solved) {
  std::vector<Badge> badges;
  for (const Outcome& outcome : solved.outcomes) {
    const std::string room =
        solved.outcomes.size() > 1 ? solved.variant.spaces[outcome.space].name + ": " : "";
    badges.push_back({room + badge(outcome), tone_of(outcome.kind)});
  }
  return badges;
}

Cell outcome_cell(const SolvedVariant& solved, SpaceId room) {
  const Outcome* outcome = outcome_of(solved, room);
  return outcome == nullptr ? words_cell("–") : words_cell(badge(*outcome), tone_of(outcome->kind));
}

Document document_of(const Results& results) {
  Document document{results.title, results.note, {}, {}};
  if (results.variants.empty()) return document;
  document.first = first_screen(results);
  const auto section = [&](std::string name, std::string title, Reader reader, Blocks blocks) {
    if (!blocks.empty())
      document.sections.push_back({std::move(name), std::move(title), reader, std::move(blocks)});
  };
  section("warnings", "Warnings", Reader::owner, warnings_part(results));
  section("work", "The work", Reader::contractor, work_part(results, document.first));
  section("variants", "All variants", Reader::owner, variants_part(results));
  section("surface", "Along the inside surface", Reader::engineer, surface_part(results));
  section("enough", "What would be enough", Reader::contractor, enough_part(results));
  section("year", "Over the year", Reader::engineer, year_part(results));
  section("readings", "Readings against the model", Reader::engineer, readings_part(results));
  section("vapour", "Vapour and drying", Reader::engineer, vapour_part(results));
  section("heat", "Heat loss", Reader::building_control, heat_part(results));
  section("basis", "What it rests on", Reader::engineer, basis_part(results));
  section("checks", "Checks and bands", Reader::engineer, checks_part(results));
  section("cautions", "Cautions", Reader::owner, cautions_part(results));
  section("made-from", "Made from", Reader::engineer, made_from_part(results));
  return document;
}

const Section* section_named(const Document& document, std::string_view name) {
  const auto found = std::find_if(document.sections.begin(), document.sections.end(),
                                  [&](const Section& each) { return each.name == name; });
  return found == document.sections.end() ? nullptr : &*found;
}

}  // namespace quoin::tools::report
