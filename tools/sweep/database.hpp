// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <filesystem>
#include <functional>
#include <map>
#include <string>
#include <variant>

struct sqlite3;
struct sqlite3_stmt;

namespace quoin::tools {

class Database;

/// A prepared statement. Values are bound from the first place on; columns count from 0.
class Statement {
 public:
  Statement(Database& base, sqlite3_stmt* statement) : base_(&base), statement_(statement) {}
  Statement(Statement&& other) noexcept;
  Statement& operator=(Statement&&) = delete;
  ~Statement();

  void reset();
  Statement& bind(std::uint64_t value);
  Statement& bind(double value);
  Statement& bind(const std::string& text);
  Statement& bind_bytes(const std::string& bytes);
  Statement& bind_nothing();

  /// Whether there is a row to read. Throws: DiskError.
  [[nodiscard]] bool step();
  [[nodiscard]] std::variant<std::monostate, double, std::string> cell(int column) const;
  [[nodiscard]] std::string text(int column) const;
  [[nodiscard]] std::uint64_t whole(int column) const;
  [[nodiscard]] std::string bytes(int column) const;

 private:
  Database* base_;
  sqlite3_stmt* statement_;
  int next_ = 1;
};

/// A file of SQLite. It is whole at every moment, however the program ends: what was not committed
/// is not there.
class Database {
 public:
  enum class Use { write, read };

  /// Throws: DiskError, as does all below.
  Database(const std::filesystem::path& file, Use use);
  Database(const Database&) = delete;
  Database& operator=(const Database&) = delete;
  ~Database();

  [[nodiscard]] const std::filesystem::path& file() const { return file_; }

  void run(const std::string& sql);
  /// Kept, and reset when it is asked for again.
  [[nodiscard]] Statement& prepared(const std::string& sql);

  /// Begins to write, unless that is begun.
  void begin();
  /// Makes sure that what was changed stays. False while another program reads the file: nothing is
  /// lost, and it can be tried again.
  [[nodiscard]] bool commit();
  /// Reads what belongs together: no other program writes meanwhile.
  void at_once(const std::function<void()>& read);

  /// Says what went wrong last.
  [[noreturn]] void fail() const;

 private:
  std::filesystem::path file_;
  sqlite3* base_ = nullptr;
  std::map<std::string, Statement> statements_;
};

}  // namespace quoin::tools
