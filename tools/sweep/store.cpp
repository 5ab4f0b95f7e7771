// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/store.hpp"

#include <fmt/format.h>
#include <sqlite3.h>

#include <algorithm>
#include <array>

#include "tools/disk/disk_error.hpp"

namespace quoin::tools {
namespace {

constexpr int wait_for_others = 10'000;  // ms, where another process reads or writes the same file
constexpr int cache = -8192;             // KiB

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

std::string key_of(const void* bytes, int count) {
  std::string key;
  const auto* data = static_cast<const unsigned char*>(bytes);
  for (int k = 0; k < count; ++k) key += fmt::format("{:02x}", data[k]);
  return key;
}

}  // namespace

/// A prepared statement that is reset when it is used again.
class SweepStore::Statement {
 public:
  explicit Statement(sqlite3_stmt* statement) : statement_(statement) {}
  Statement(Statement&& other) noexcept : statement_(std::exchange(other.statement_, nullptr)) {}
  Statement& operator=(Statement&&) = delete;
  ~Statement() { sqlite3_finalize(statement_); }

  void reset() {
    sqlite3_reset(statement_);
    sqlite3_clear_bindings(statement_);
    next_ = 1;
  }
  Statement& bind(std::uint64_t value) {
    sqlite3_bind_int64(statement_, next_++, static_cast<sqlite3_int64>(value));
    return *this;
  }
  Statement& bind(double value) {
    sqlite3_bind_double(statement_, next_++, value);
    return *this;
  }
  Statement& bind(const std::string& text) {
    sqlite3_bind_text(statement_, next_++, text.data(), static_cast<int>(text.size()),
                      SQLITE_TRANSIENT);
    return *this;
  }
  Statement& bind_bytes(const std::string& bytes) {
    sqlite3_bind_blob(statement_, next_++, bytes.data(), static_cast<int>(bytes.size()),
                      SQLITE_TRANSIENT);
    return *this;
  }
  Statement& bind_nothing() {
    ++next_;
    return *this;
  }
  /// Whether there is a row to read.
  [[nodiscard]] bool step(const SweepStore& store) {
    const int code = sqlite3_step(statement_);
    if (code != SQLITE_ROW && code != SQLITE_DONE) store.fail();
    return code == SQLITE_ROW;
  }
  [[nodiscard]] Cell cell(int column) const {
    switch (sqlite3_column_type(statement_, column)) {
      case SQLITE_INTEGER:
      case SQLITE_FLOAT:
        return sqlite3_column_double(statement_, column);
      case SQLITE_TEXT:
        return text(column);
      default:
        return {};
    }
  }
  [[nodiscard]] std::string text(int column) const {
    const auto* data = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
    return data == nullptr
               ? std::string()
               : std::string(data,
                             static_cast<std::size_t>(sqlite3_column_bytes(statement_, column)));
  }
  [[nodiscard]] std::uint64_t whole(int column) const {
    return static_cast<std::uint64_t>(sqlite3_column_int64(statement_, column));
  }
  [[nodiscard]] std::string key(int column) const {
    return key_of(sqlite3_column_blob(statement_, column),
                  sqlite3_column_bytes(statement_, column));
  }

 private:
  sqlite3_stmt* statement_;
  int next_ = 1;
};

SweepStore::SweepStore(const std::filesystem::path& file, Use use) : file_(file) {
  // Reading, too, may have to take back what a killed run left half written.
  const int flags = SQLITE_OPEN_READWRITE | (use == Use::write ? SQLITE_OPEN_CREATE : 0);
  if (sqlite3_open_v2(file.c_str(), &base_, flags, nullptr) != SQLITE_OK) {
    const std::string reason = sqlite3_errmsg(base_);
    sqlite3_close(base_);
    throw DiskError(file, reason);
  }
  try {
    sqlite3_busy_timeout(base_, wait_for_others);
    run(fmt::format("PRAGMA cache_size = {}", cache));
    if (use == Use::write) {
      run("BEGIN IMMEDIATE;"
          "CREATE TABLE IF NOT EXISTS notes(name TEXT PRIMARY KEY, text TEXT) WITHOUT ROWID;"
          "CREATE TABLE IF NOT EXISTS rows(key BLOB PRIMARY KEY, number INTEGER, filled INTEGER,"
          " ending INTEGER, fault TEXT) WITHOUT ROWID;"
          "CREATE UNIQUE INDEX IF NOT EXISTS by_number ON rows(number) WHERE number IS NOT NULL; "
          "COMMIT");
    }
  } catch (const DiskError&) {
    sqlite3_close(base_);
    throw;
  }
}

SweepStore::~SweepStore() {
  statements_.clear();
  sqlite3_close(base_);  // what is not committed is taken back
}

void SweepStore::fail() const {
  const int code = sqlite3_errcode(base_);
  const std::string remedy =
      code == SQLITE_NOTADB || code == SQLITE_CORRUPT
          ? "; the file is not one of a sweep, or was damaged: take it away to begin anew"
      : code == SQLITE_FULL ? "; what was written before is kept: make room and run it again"
                            : "";
  throw DiskError(file_, sqlite3_errmsg(base_) + remedy);
}

void SweepStore::run(const std::string& sql) {
  if (sqlite3_exec(base_, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) fail();
}

SweepStore::Statement& SweepStore::prepared(const std::string& sql) {
  auto found = statements_.find(sql);
  if (found == statements_.end()) {
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(base_, sql.c_str(), -1, &statement, nullptr) != SQLITE_OK) fail();
    found = statements_.emplace(sql, Statement(statement)).first;
  }
  found->second.reset();
  return found->second;
}

void SweepStore::begin() {
  if (open_) return;
  run("BEGIN IMMEDIATE");
  open_ = true;
}

void SweepStore::commit() {
  if (!open_) return;
  run("COMMIT");
  open_ = false;
}

bool SweepStore::is_made() {
  Statement& statement = prepared("SELECT 1 FROM sqlite_master WHERE name = 'notes'");
  const bool made = statement.step(*this);
  statement.reset();
  return made;
}

std::string SweepStore::note(const std::string& name) {
  Statement& statement = prepared("SELECT text FROM notes WHERE name = ?");
  const bool known = statement.bind(name).step(*this);
  std::string text = known ? statement.text(0) : "";
  statement.reset();
  return text;
}

void SweepStore::set_note(const std::string& name, const std::string& text) {
  begin();
  static_cast<void>(
      prepared("INSERT OR REPLACE INTO notes VALUES(?, ?)").bind(name).bind(text).step(*this));
}

std::vector<std::string> SweepStore::columns() {
  constexpr std::size_t others = 5;  // that every file has, the first
  std::vector<std::string> present;
  Statement& known =
      prepared("SELECT name FROM pragma_table_info('rows') WHERE cid >= ? ORDER BY cid");
  known.bind(std::uint64_t{others});
  while (known.step(*this)) present.push_back(known.text(0));
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
      begin();
      run(fmt::format("ALTER TABLE rows ADD COLUMN {} {}", name_in_sql(column.name),
                      column.words ? "TEXT" : "REAL"));
      found = present.insert(present.end(), column.name);
    }
    layout_ = std::max(layout_, static_cast<std::size_t>(found - present.begin()) + 1);
  }
}

void SweepStore::forget_numbers() {
  begin();
  run("UPDATE rows SET number = NULL WHERE number IS NOT NULL");
}

void SweepStore::forget_answers() {
  begin();
  run("UPDATE rows SET filled = 0");
}

void SweepStore::each_number(const std::function<void(std::uint64_t, RowEnd)>& take) {
  Statement& statement = prepared(
      "SELECT number, ending FROM rows WHERE number IS NOT NULL AND filled >= ? ORDER BY number");
  statement.bind(std::uint64_t{layout_});
  while (statement.step(*this)) take(statement.whole(0), static_cast<RowEnd>(statement.whole(1)));
  statement.reset();
}

std::string SweepStore::wanted_columns() const {
  std::string names = "number, key, ending, fault";
  for (const SweepColumn& column : asked_) names += ", " + name_in_sql(column.name);
  return names;
}

StoredRow SweepStore::row_of(Statement& statement) const {
  StoredRow row{statement.whole(0),
                statement.key(1),
                {},
                statement.text(3),
                static_cast<RowEnd>(statement.whole(2))};
  if (row.fault.empty()) {
    for (std::size_t c = 0; c < asked_.size(); ++c)
      row.cells.push_back(statement.cell(static_cast<int>(4 + c)));
  }
  return row;
}

std::optional<StoredRow> SweepStore::next_row() {
  const std::string sql =
      fmt::format("SELECT {} FROM rows WHERE number IS NOT NULL AND filled >= ? ORDER BY number",
                  wanted_columns());
  if (!walking_) prepared(sql).bind(std::uint64_t{layout_});
  Statement& statement = statements_.at(sql);
  walking_ = statement.step(*this);
  if (!walking_) {
    statement.reset();
    return std::nullopt;
  }
  return row_of(statement);
}

std::optional<StoredRow> SweepStore::find(const std::string& key) {
  Statement& statement =
      prepared(fmt::format("SELECT {} FROM rows WHERE key = ? AND filled >= ?", wanted_columns()));
  std::optional<StoredRow> row;
  if (statement.bind_bytes(bytes_of(key)).bind(std::uint64_t{layout_}).step(*this))
    row = row_of(statement);
  statement.reset();
  return row;
}

void SweepStore::add(const StoredRow& row) {
  begin();
  std::string names = "key, number, filled, ending, fault", values = "?, ?, ?, ?, ?";
  for (const SweepColumn& column : asked_) {
    names += ", " + name_in_sql(column.name);
    values += ", ?";
  }
  Statement& statement =
      prepared(fmt::format("INSERT OR REPLACE INTO rows({}) VALUES({})", names, values));
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
  static_cast<void>(statement.step(*this));
}

void SweepStore::show(const std::vector<ShownAxis>& axes) {
  begin();
  run("DROP VIEW IF EXISTS sweep; DROP TABLE IF EXISTS axes;"
      "CREATE TABLE axes(axis INTEGER, position INTEGER, value NUMERIC,"
      " PRIMARY KEY(axis, position)) WITHOUT ROWID");
  std::string shown = "rows.number";
  std::string joined;
  for (std::size_t a = 0; a < axes.size(); ++a) {
    for (std::size_t v = 0; v < axes[a].values.size(); ++v) {
      static_cast<void>(prepared("INSERT INTO axes VALUES(?, ?, ?)")
                            .bind(std::uint64_t{a})
                            .bind(std::uint64_t{v})
                            .bind(axes[a].values[v])
                            .step(*this));
    }
    shown += fmt::format(", a{}.value AS {}", a, name_in_sql(axes[a].path));
    joined += fmt::format(
        " JOIN axes AS a{0} ON a{0}.axis = {0} AND a{0}.position = rows.number / {1} % {2}", a,
        axes[a].stride, axes[a].values.size());
  }
  for (const SweepColumn& column : asked_) shown += ", rows." + name_in_sql(column.name);
  run(
      fmt::format("CREATE VIEW sweep AS SELECT {}, rows.fault FROM rows{} WHERE number IS NOT NULL"
                  " ORDER BY rows.number",
                  shown, joined));
}

}  // namespace quoin::tools
