// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <charconv>
#include <fstream>
#include <istream>
#include <sstream>
#include <stdexcept>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::testing {

/// One row of a table of check values.
class CsvRow {
 public:
  CsvRow(const std::vector<std::string>& columns, std::vector<std::string> cells)
      : columns_(&columns), cells_(std::move(cells)) {}

  /// Throws: std::runtime_error where the table has no such column.
  [[nodiscard]] const std::string& text(std::string_view column) const {
    const auto found = std::ranges::find(*columns_, column);
    if (found == columns_->end()) throw std::runtime_error("no column " + std::string(column));
    return cells_[static_cast<std::size_t>(found - columns_->begin())];
  }

  /// Throws: std::runtime_error where the cell is not a number and nothing else.
  [[nodiscard]] double number(std::string_view column) const {
    const std::string& cell = text(column);
    double value = 0.0;
    const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), value);
    if (error != std::errc{} || end != cell.data() + cell.size()) {
      throw std::runtime_error("'" + cell + "' in column " + std::string(column) +
                               " is not a number");
    }
    return value;
  }

 private:
  const std::vector<std::string>* columns_;
  std::vector<std::string> cells_;
};

/// A table of check values: lines that begin with # are remarks, the first of which names the
/// source; the next line names the columns; the rows follow. Cells hold no commas.
class Csv {
 public:
  /// Throws: std::runtime_error where the text names no source, or has no row, or a row has not as
  /// many cells as there are columns.
  explicit Csv(std::istream& text) {
    std::string line;
    bool sourced = false;
    while (std::getline(text, line)) {
      if (line.starts_with("# Source: ")) sourced = true;
      if (line.empty() || line.starts_with('#')) continue;
      std::vector<std::string> cells = cells_of(line);
      if (columns_.empty()) {
        columns_ = std::move(cells);
      } else if (cells.size() == columns_.size()) {
        rows_.emplace_back(columns_, std::move(cells));
      } else {
        throw std::runtime_error("wrong number of cells: " + line);
      }
    }
    if (!sourced) throw std::runtime_error("the table names no source");
    if (rows_.empty()) throw std::runtime_error("the table has no rows");
  }

  Csv(const Csv&) = delete;  // the rows point to the columns
  Csv& operator=(const Csv&) = delete;

  [[nodiscard]] const std::vector<CsvRow>& rows() const { return rows_; }

 private:
  static std::vector<std::string> cells_of(const std::string& line) {
    std::vector<std::string> cells;
    std::istringstream text(line + ",");
    for (std::string cell; std::getline(text, cell, ',');) cells.push_back(cell);
    return cells;
  }

  std::vector<std::string> columns_;
  std::vector<CsvRow> rows_;
};

/// A table of check values in a file.
/// Throws: std::runtime_error where it cannot be read.
[[nodiscard]] inline Csv csv_of(const std::string& path) {
  std::ifstream file(path);
  if (!file) throw std::runtime_error("cannot read " + path);
  return Csv(file);
}

}  // namespace quoin::testing
