// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "tools/output/report/report.hpp"
#include "tools/output/report/shared_rows.hpp"

namespace quoin::tools::report {

/// What the document is put together from. Each is the content of one section, empty where there
/// is nothing to say.
using Blocks = std::vector<Block>;

[[nodiscard]] FirstScreen first_screen(const Results& results);
[[nodiscard]] Blocks work_part(const Results& results, const FirstScreen& first);
[[nodiscard]] Blocks variants_part(const Results& results);
[[nodiscard]] Blocks surface_part(const Results& results);
[[nodiscard]] Blocks enough_part(const Results& results);
[[nodiscard]] Blocks year_part(const Results& results);
[[nodiscard]] Blocks readings_part(const Results& results);
/// What a survey tells; and how often each criterion would be broken, of 100 cases like this.
[[nodiscard]] Blocks survey_part(const Results& results);
[[nodiscard]] Blocks chance_part(const Results& results);
[[nodiscard]] Blocks vapour_part(const Results& results);
[[nodiscard]] Blocks heat_part(const Results& results);
[[nodiscard]] Blocks warnings_part(const Results& results);
[[nodiscard]] Blocks basis_part(const Results& results);
[[nodiscard]] Blocks checks_part(const Results& results);
[[nodiscard]] Blocks cautions_part(const Results& results);
[[nodiscard]] Blocks made_from_part(const Results& results);

/// By which rules, and what the method leaves out.
[[nodiscard]] std::vector<std::string> assumptions();

/// What the chance of an outcome counts, and where the limits between words for it lie.
[[nodiscard]] std::string risk_words();

using Row = std::vector<Cell>;

/// Adds a table if it has rows.
void add(Blocks& blocks, Table table);

/// Rows that several variants share, each begun by the names of its variants.
[[nodiscard]] std::vector<Row> rows_of(const SharedRows<Row>& shared, std::size_t variants);

/// A badge for each room of a variant, with its name where there are several.
[[nodiscard]] std::vector<Badge> badges_of(const SolvedVariant& solved);

/// The surface resistance of a space to the materials it touches, m2K/W; from the least to the most
/// where it is not one.
[[nodiscard]] Cell resistance_cell(const solver::Solution& solution, SpaceId space);

/// The outcome of a room in a cell.
[[nodiscard]] Cell outcome_cell(const SolvedVariant& solved, SpaceId room);

}  // namespace quoin::tools::report
