// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "tools/sweep/columns.hpp"
#include "tools/sweep/database.hpp"

namespace quoin::tools {

/// How a row ended.
enum class RowEnd { solved, wrong_input, numerics_failed };

/// A row as it is kept.
struct StoredRow {
  std::uint64_t number = 0;
  std::string key;          ///< hexadecimal
  std::vector<Cell> cells;  ///< Shape: the columns asked for
  std::string fault;        ///< empty: none
  RowEnd end = RowEnd::solved;
};

/// The rows of one part of a sweep in a file of SQLite, each by its key; and whatever else must be
/// known to read them, by name. What a column lacks because it was not asked for makes a row one
/// that is yet to be solved. All throw: DiskError.
class SweepStore {
 public:
  using Use = Database::Use;
  using Notes = std::map<std::string, std::string>;

  SweepStore(const std::filesystem::path& file, Use use);

  [[nodiscard]] const std::filesystem::path& file() const { return base_.file(); }

  /// What is known, by its name; nothing while another process is only about to make the file, or
  /// where it is none of a sweep.
  [[nodiscard]] Notes notes();
  void set_note(const std::string& name, const std::string& text);

  /// The names of the columns that the file has, in their order.
  [[nodiscard]] std::vector<std::string> columns();
  /// Asks for columns; when writing, those that are missing are added. A row that is added holds
  /// all that the file has.
  void ask_for(const std::vector<SweepColumn>& columns);

  /// Takes their numbers from all rows: they belong to another state of the sweep.
  void forget_numbers();
  /// Makes all rows ones that are yet to be solved.
  void forget_answers();

  /// The numbers of the rows that are there with all columns asked for, in order.
  void each_number(const std::function<void(std::uint64_t, RowEnd)>& take);
  /// These rows in order, from a number on.
  [[nodiscard]] std::vector<StoredRow> rows_from(std::uint64_t number, std::size_t most);

  /// The row of a key, if it is solved and has all columns asked for.
  [[nodiscard]] std::optional<StoredRow> find(const std::string& key);
  /// Adds or replaces the row of a key.
  void add(const StoredRow& row);

  /// Makes sure that what was changed stays. False while another program reads the file: nothing is
  /// lost, and it can be tried again.
  [[nodiscard]] bool commit() { return base_.commit(); }
  /// Reads what belongs together: no other program writes meanwhile.
  void at_once(const std::function<void()>& read) { base_.at_once(read); }

  /// A table of the values of each axis and a view named `sweep` that shows every row with them.
  /// Shape: paths with their values; how many rows it takes until each has its next value.
  struct ShownAxis {
    std::string path;
    std::vector<std::string> values;
    std::uint64_t stride = 1;
  };
  void show(const std::vector<ShownAxis>& axes);

 private:
  [[nodiscard]] StoredRow row_of(Statement& statement) const;
  [[nodiscard]] std::string wanted_columns() const;

  Database base_;
  std::vector<SweepColumn> asked_;
  std::size_t layout_ = 0;  ///< how many columns of the file a row must have
};

}  // namespace quoin::tools
