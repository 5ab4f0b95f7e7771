// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/database.hpp"

#include <sqlite3.h>

#include <utility>

#include "tools/disk/disk_error.hpp"

namespace quoin::tools {
namespace {

constexpr int wait_for_others = 10'000;  // ms, where another process reads or writes the same file
constexpr int wait_to_commit = 100;      // ms, since what is not committed is tried again
constexpr const char* cache = "PRAGMA cache_size = -8192";  // KiB

}  // namespace

Statement::Statement(Statement&& other) noexcept
    : base_(other.base_), statement_(std::exchange(other.statement_, nullptr)) {}

Statement::~Statement() { sqlite3_finalize(statement_); }

void Statement::reset() {
  sqlite3_reset(statement_);
  sqlite3_clear_bindings(statement_);
  next_ = 1;
}

Statement& Statement::bind(std::uint64_t value) {
  sqlite3_bind_int64(statement_, next_++, static_cast<sqlite3_int64>(value));
  return *this;
}

Statement& Statement::bind(double value) {
  sqlite3_bind_double(statement_, next_++, value);
  return *this;
}

Statement& Statement::bind(const std::string& text) {
  sqlite3_bind_text(statement_, next_++, text.data(), static_cast<int>(text.size()),
                    SQLITE_TRANSIENT);
  return *this;
}

Statement& Statement::bind_bytes(const std::string& bytes) {
  sqlite3_bind_blob(statement_, next_++, bytes.data(), static_cast<int>(bytes.size()),
                    SQLITE_TRANSIENT);
  return *this;
}

Statement& Statement::bind_nothing() {
  ++next_;
  return *this;
}

bool Statement::step() {
  const int code = sqlite3_step(statement_);
  if (code != SQLITE_ROW && code != SQLITE_DONE) base_->fail();
  return code == SQLITE_ROW;
}

std::variant<std::monostate, double, std::string> Statement::cell(int column) const {
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

std::string Statement::text(int column) const {
  const auto* data = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
  if (data == nullptr) return "";
  return {data, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

std::uint64_t Statement::whole(int column) const {
  return static_cast<std::uint64_t>(sqlite3_column_int64(statement_, column));
}

std::string Statement::bytes(int column) const {
  const auto* data = static_cast<const char*>(sqlite3_column_blob(statement_, column));
  if (data == nullptr) return "";
  return {data, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

Database::Database(const std::filesystem::path& file, Use use) : file_(file) {
  // Reading, too, may have to take back what a killed run left half written.
  const int flags = SQLITE_OPEN_READWRITE | (use == Use::write ? SQLITE_OPEN_CREATE : 0);
  if (sqlite3_open_v2(file.c_str(), &base_, flags, nullptr) != SQLITE_OK) {
    const std::string reason = sqlite3_errmsg(base_);
    sqlite3_close(base_);
    throw DiskError(file, reason);
  }
  sqlite3_busy_timeout(base_, wait_for_others);
  try {
    run(cache);
  } catch (const DiskError&) {
    sqlite3_close(base_);
    throw;
  }
}

Database::~Database() {
  statements_.clear();
  sqlite3_close(base_);  // what is not committed is taken back
}

void Database::fail() const {
  const int code = sqlite3_errcode(base_);
  const std::string remedy =
      code == SQLITE_NOTADB || code == SQLITE_CORRUPT
          ? "; the file is not one of a sweep, or was damaged: take it away to begin anew"
      : code == SQLITE_FULL ? "; what was written before is kept: make room and run it again"
      : code == SQLITE_BUSY ? "; another program reads or writes it: try again when that has ended"
                            : "";
  throw DiskError(file_, sqlite3_errmsg(base_) + remedy);
}

void Database::run(const std::string& sql) {
  if (sqlite3_exec(base_, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK) fail();
}

Statement& Database::prepared(const std::string& sql) {
  auto found = statements_.find(sql);
  if (found == statements_.end()) {
    sqlite3_stmt* statement = nullptr;
    if (sqlite3_prepare_v2(base_, sql.c_str(), -1, &statement, nullptr) != SQLITE_OK) fail();
    found = statements_.emplace(sql, Statement(*this, statement)).first;
  }
  found->second.reset();
  return found->second;
}

void Database::begin() {
  if (sqlite3_get_autocommit(base_) != 0) run("BEGIN IMMEDIATE");
}

bool Database::commit() {
  if (sqlite3_get_autocommit(base_) != 0) return true;
  sqlite3_busy_timeout(base_, wait_to_commit);
  const int code = sqlite3_exec(base_, "COMMIT", nullptr, nullptr, nullptr);
  sqlite3_busy_timeout(base_, wait_for_others);
  if (code != SQLITE_OK && code != SQLITE_BUSY) fail();
  return code == SQLITE_OK;
}

void Database::at_once(const std::function<void()>& read) {
  run("BEGIN");
  try {
    read();
  } catch (...) {
    for (auto& [sql, statement] : statements_) statement.reset();
    sqlite3_exec(base_, "ROLLBACK", nullptr, nullptr, nullptr);
    throw;
  }
  run("COMMIT");
}

}  // namespace quoin::tools
