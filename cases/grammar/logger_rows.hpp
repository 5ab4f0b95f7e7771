// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// One value of a logger's table: without blanks and quotes, and where it stands.
struct LoggerCell {
  std::string text;
  Mark mark;
};

/// A logger's table as it is written, before anything is looked for in it.
struct LoggerTable {
  char separator = ',';  ///< a comma, a semicolon or a tab
  std::vector<std::vector<LoggerCell>> rows;
};

/// The rows of a text; empty lines and lines that begin with # are left out. The separator is the
/// one met most often. A quoted value may hold separators, and a quote written twice.
[[nodiscard]] LoggerTable logger_table(std::string_view text);

/// The name of a column without its unit: "Outside temperature [°C]" is "outside temperature".
[[nodiscard]] std::string column_name(std::string_view heading);

/// The unit in brackets behind a column's name, or behind its last comma; may be empty.
[[nodiscard]] std::string column_unit(std::string_view heading);

}  // namespace quoin::cases
