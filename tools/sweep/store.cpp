// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/store.hpp"

#include <fmt/format.h>

#include <algorithm>

namespace quoin::tools {
namespace {

std::string name_in_sql(const std::string& name) {
  std::string quoted = "\"";
  for (const char sign : name) {
    quoted += sign;
    if (sign == '"') quoted += sign;
  }
  return quoted + '"';
}

int digit(char sign) { return sign <= '9' ? sign - '0' : sign - 'a' + 10; }

/// The bytes of a key. Shape: 32.
std::string bytes_of(const std::string& key) {
  std::string bytes;
  for (std::size_t k = 0; k + 1 < key.size(); k += 2)
    bytes += static_cast<char>(digit(key[k]) * 16 + digit(key[k + 1]));
  return bytes;
}

std::string key_of(const std::string& bytes) {
  std::string key;
  for (const char byte : bytes) key += fmt::format("{:02x}", static_cast<unsigned char>(byte));
  return key;
}

}  // namespace

SweepStore::SweepStore(const std::filesystem::path& file, Use use) : base_(file, use) {
  if (use == Use::read) return;
  base_.run(
      "BEGIN IMMEDIATE;"
      "CREATE TABLE IF NOT EXISTS notes(name TEXT PRIMARY KEY, text TEXT) WITHOUT ROWID;"
      "CREATE TABLE IF NOT EXISTS rows(key BLOB PRIMARY KEY, number INTEGER, filled INTEGER,"
      " ending INTEGER, fault TEXT) WITHOUT ROWID;"
      "CREATE UNIQUE INDEX IF NOT EXISTS by_number ON rows(number) WHERE number IS NOT NULL; "
      "COMMIT");
}

SweepStore::Notes SweepStore::notes() {
  Notes notes;
  Statement& made = base_.prepared("SELECT 1 FROM sqlite_master WHERE name = 'notes'");
  const bool is_made = made.step();
  made.reset();
  if (!is_made) return notes;  // another process is only about to
  Statement& statement = base_.prepared("SELECT name, text FROM notes");
  while (statement.step()) notes.emplace(statement.text(0), statement.text(1));
  statement.reset();
  return notes;
}

void SweepStore::set_note(const std::string& name, const std::string& text) {
  base_.begin();
  Statement& statement = base_.prepared("INSERT OR REPLACE INTO notes VALUES(?, ?)");
  static_cast<void>(statement.bind(name).bind(text).step());
}

std::vector<std::string> SweepStore::columns() {
  constexpr std::size_t others = 5;  // that every file has, the first
  std::vector<std::string> present;
  Statement& known =
      base_.prepared("SELECT name FROM pragma_table_info('rows') WHERE cid >= ? ORDER BY cid");
  known.bind(std::uint64_t{others});
  while (known.step()) present.push_back(known.text(0));
  known.reset();
  return present;
}

void SweepStore::ask_for(const std::vector<SweepColumn>& columns_asked) {
  std::vector<std::string> present = columns();
  asked_ = columns_asked;
  layout_ = 0;
  for (const SweepColumn& column : asked_) {
    auto found = std::find(present.begin(), present.end(), column.name);
    if (found == present.end()) {
      base_.begin();
      base_.run(fmt::format("ALTER TABLE rows ADD COLUMN {} {}", name_in_sql(column.name),
                            column.words ? "TEXT" : "REAL"));
      found = present.insert(present.end(), column.name);
    }
    layout_ = std::max(layout_, static_cast<std::size_t>(found - present.begin()) + 1);
  }
}

void SweepStore::forget_numbers() {
  base_.begin();
  base_.run("UPDATE rows SET number = NULL WHERE number IS NOT NULL");
}

void SweepStore::forget_answers() {
  base_.begin();
  base_.run("UPDATE rows SET filled = 0");
}

void SweepStore::each_number(const std::function<void(std::uint64_t, RowEnd)>& take) {
  Statement& statement = base_.prepared(
      "SELECT number, ending FROM rows WHERE number IS NOT NULL AND filled >= ? ORDER BY number");
  statement.bind(std::uint64_t{layout_});
  while (statement.step()) take(statement.whole(0), static_cast<RowEnd>(statement.whole(1)));
  statement.reset();
}

std::string SweepStore::wanted_columns() const {
  std::string names = "number, key, ending, fault";
  for (const SweepColumn& column : asked_) names += ", " + name_in_sql(column.name);
  return names;
}

StoredRow SweepStore::row_of(Statement& statement) const {
  StoredRow row{statement.whole(0),
                key_of(statement.bytes(1)),
                {},
                statement.text(3),
                static_cast<RowEnd>(statement.whole(2))};
  if (row.fault.empty()) {
    for (std::size_t c = 0; c < asked_.size(); ++c)
      row.cells.push_back(statement.cell(static_cast<int>(4 + c)));
  }
  return row;
}

std::vector<StoredRow> SweepStore::rows_from(std::uint64_t number, std::size_t most) {
  std::vector<StoredRow> rows;
  Statement& statement = base_.prepared(
      fmt::format("SELECT {} FROM rows WHERE number >= ? AND filled >= ? ORDER BY number LIMIT ?",
                  wanted_columns()));
  statement.bind(number).bind(std::uint64_t{layout_}).bind(std::uint64_t{most});
  while (statement.step()) rows.push_back(row_of(statement));
  statement.reset();
  return rows;
}

std::optional<StoredRow> SweepStore::find(const std::string& key) {
  Statement& statement = base_.prepared(
      fmt::format("SELECT {} FROM rows WHERE key = ? AND filled >= ?", wanted_columns()));
  std::optional<StoredRow> row;
  if (statement.bind_bytes(bytes_of(key)).bind(std::uint64_t{layout_}).step())
    row = row_of(statement);
  statement.reset();
  return row;
}

void SweepStore::add(const StoredRow& row) {
  base_.begin();
  std::string names = "key, number, filled, ending, fault", values = "?, ?, ?, ?, ?";
  for (const SweepColumn& column : asked_) {
    names += ", " + name_in_sql(column.name);
    values += ", ?";
  }
  Statement& statement =
      base_.prepared(fmt::format("INSERT OR REPLACE INTO rows({}) VALUES({})", names, values));
  // A row that failed lacks nothing: it would fail for whatever column.
  const std::uint64_t filled = row.fault.empty() ? layout_ : std::uint64_t{1} << 30;
  statement.bind_bytes(bytes_of(row.key)).bind(row.number).bind(filled);
  statement.bind(static_cast<std::uint64_t>(row.end));
  if (row.fault.empty()) {
    statement.bind_nothing();
  } else {
    statement.bind(row.fault);
  }
  for (const Cell& cell : row.cells) {
    if (const auto* number = std::get_if<double>(&cell)) {
      statement.bind(*number);
    } else if (const auto* words = std::get_if<std::string>(&cell)) {
      statement.bind(*words);
    } else {
      statement.bind_nothing();
    }
  }
  static_cast<void>(statement.step());
}

void SweepStore::show(const std::vector<ShownAxis>& axes) {
  base_.begin();
  base_.run(
      "DROP VIEW IF EXISTS sweep; DROP TABLE IF EXISTS axes;"
      "CREATE TABLE axes(axis INTEGER, position INTEGER, value NUMERIC,"
      " PRIMARY KEY(axis, position)) WITHOUT ROWID");
  std::string shown = "rows.number";
  std::string joined;
  for (std::size_t a = 0; a < axes.size(); ++a) {
    for (std::size_t v = 0; v < axes[a].values.size(); ++v) {
      static_cast<void>(base_.prepared("INSERT INTO axes VALUES(?, ?, ?)")
                            .bind(std::uint64_t{a})
                            .bind(std::uint64_t{v})
                            .bind(axes[a].values[v])
                            .step());
    }
    shown += fmt::format(", a{}.value AS {}", a, name_in_sql(axes[a].path));
    joined += fmt::format(
        " JOIN axes AS a{0} ON a{0}.axis = {0} AND a{0}.position = rows.number / {1} % {2}", a,
        axes[a].stride, axes[a].values.size());
  }
  for (const SweepColumn& column : asked_) shown += ", rows." + name_in_sql(column.name);
  base_.run(
      fmt::format("CREATE VIEW sweep AS SELECT {}, rows.fault FROM rows{} WHERE number IS NOT NULL"
                  " ORDER BY rows.number",
                  shown, joined));
}

}  // namespace quoin::tools
