// SPDX-License-Identifier: Apache-2.0
// The report is stated once: terminal, page and PDF show the same cells.
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <variant>
#include <vector>

#include "tests/tools/by_hand.hpp"
#include "tools/draw/canvas/xml.hpp"
#include "tools/output/html/html_parts.hpp"
#include "tools/output/report.hpp"
#include "tools/output/text/table_text.hpp"

namespace quoin::testing {
namespace {

using tools::report::Table;

std::vector<Table> tables_of(const tools::report::Document& document) {
  std::vector<Table> tables{document.first.variants};
  for (const auto& section : document.sections) {
    for (const auto& block : section.blocks) {
      if (const auto* table = std::get_if<Table>(&block)) tables.push_back(*table);
    }
  }
  return tables;
}

/// What stands between two and more spaces.
std::vector<std::string> parted(const std::string& line) {
  std::vector<std::string> cells;
  for (std::size_t at = line.find_first_not_of(' '); at < line.size();) {
    const std::size_t end = std::min(line.find("  ", at), line.size());
    cells.push_back(line.substr(at, end - at));
    at = line.find_first_not_of(' ', end);
  }
  return cells;
}

std::vector<std::vector<std::string>> printed_rows(const std::string& text) {
  std::vector<std::vector<std::string>> rows;
  for (std::size_t at = text.find('\n') + 1; at < text.size();) {  // after the headings
    const std::size_t end = text.find('\n', at);
    rows.push_back(parted(text.substr(at, end - at)));
    at = end + 1;
  }
  return rows;
}

/// The words of each cell of a page's table, its markup left out.
std::vector<std::vector<std::string>> page_rows(const std::string& page) {
  std::vector<std::vector<std::string>> rows;
  const std::size_t body = page.find("<tbody>");
  for (std::size_t row = page.find("<tr>", body); row != std::string::npos;
       row = page.find("<tr>", row + 1)) {
    const std::size_t row_end = page.find("</tr>", row);
    rows.emplace_back();
    for (std::size_t cell = page.find("<td", row); cell < row_end;
         cell = page.find("<td", cell + 1)) {
      const std::string inner = page.substr(cell, page.find("</td>", cell) - cell);
      std::string words;
      bool tag = false;
      for (const char c : inner) {
        if (c == '<') tag = true;
        if (!tag) words += c;
        if (c == '>') tag = false;
      }
      rows.back().push_back(words);
    }
  }
  return rows;
}

}  // namespace

TEST_CASE("every table has the same cells on the terminal and on the page") {
  const tools::report::Document document = tools::report::document_of(results_by_hand());
  const std::vector<Table> tables = tables_of(document);
  REQUIRE(tables.size() > 6);
  for (const Table& table : tables) {
    CAPTURE(table.caption);
    const auto printed = printed_rows(tools::table_text(table, {.width = 4000}));
    const auto shown = page_rows(tools::html_table(table));
    REQUIRE(printed.size() == table.rows.size());
    REQUIRE(shown.size() == table.rows.size());
    for (std::size_t r = 0; r < table.rows.size(); ++r) {
      REQUIRE(printed[r].size() == table.columns.size());
      REQUIRE(shown[r].size() == table.columns.size());
      for (std::size_t c = 0; c < table.columns.size(); ++c) {
        CHECK(printed[r][c] == tools::report::text_of(table.rows[r][c]));
        if (!table.rows[r][c].bar) CHECK(shown[r][c] == tools::escaped(printed[r][c]));
      }
    }
  }
}

TEST_CASE("no band is said to be nothing") {
  for (const Table& table : tables_of(tools::report::document_of(results_by_hand()))) {
    for (const auto& row : table.rows) {
      for (const auto& cell : row) {
        const std::string text = tools::report::text_of(cell);
        CHECK(text.find("± 0.000 ") == std::string::npos);
        CHECK_FALSE(text.ends_with("± 0.000"));
        CHECK_FALSE(text.ends_with("± 0.0"));
      }
    }
  }
  CHECK(tools::report::text_of(tools::report::band_cell(0.5, 0.0, 3)) == "0.500 ± 0.001");
}

}  // namespace quoin::testing
