// SPDX-License-Identifier: Apache-2.0
#include "cases/grammar/logger_rows.hpp"

#include <algorithm>
#include <array>
#include <cctype>

#include "cases/grammar/quantity.hpp"
#include "cases/text/plain_text.hpp"

namespace quoin::cases {
namespace {

std::vector<LoggerCell> cells_of(std::string_view line, std::size_t number, char separator) {
  std::vector<LoggerCell> cells;
  std::size_t at = 0;
  while (at <= line.size()) {
    std::size_t begin = at;
    while (begin < line.size() && line[begin] == ' ') ++begin;
    LoggerCell cell{"", {number, begin + 1}};
    if (begin < line.size() && line[begin] == '"') {
      std::size_t in = begin + 1;
      for (; in < line.size(); ++in) {
        if (line[in] != '"') {
          cell.text += line[in];
        } else if (in + 1 < line.size() && line[in + 1] == '"') {
          cell.text += line[++in];
        } else {
          break;
        }
      }
      at = std::min(line.find(separator, std::min(in, line.size())), line.size());
    } else {
      at = std::min(line.find(separator, begin), line.size());
      cell.text = line.substr(begin, at - begin);
    }
    cell.text = std::string(trimmed(cell.text));
    cells.push_back(std::move(cell));
    ++at;
  }
  return cells;
}

char separator_of(const std::vector<std::string_view>& lines) {
  std::array<std::size_t, 3> met{};
  constexpr std::string_view separators = ";\t,";  // a comma may be a decimal one
  for (const std::string_view line : lines) {
    for (std::size_t s = 0; s < separators.size(); ++s) {
      if (line.find(separators[s]) != std::string_view::npos) ++met[s];
    }
  }
  for (std::size_t s = 0; s + 1 < separators.size(); ++s) {
    if (2 * met[s] > lines.size()) return separators[s];
  }
  return ',';
}

/// Where the unit of a heading begins and what it is.
struct Bracketed {
  std::size_t from = std::string_view::npos;
  std::string_view text;
};

Bracketed unit_of(std::string_view heading) {
  for (const auto& [open, close] : {std::pair{'[', ']'}, std::pair{'(', ')'}}) {
    const std::size_t from = heading.rfind(open), to = heading.rfind(close);
    if (from != std::string_view::npos && to != std::string_view::npos && to > from)
      return {from, trimmed(heading.substr(from + 1, to - from - 1))};
  }
  const std::size_t comma = heading.rfind(',');
  if (comma != std::string_view::npos) return {comma, trimmed(heading.substr(comma + 1))};
  return {};
}

}  // namespace

LoggerTable logger_table(std::string_view text) {
  LoggerTable table;
  std::vector<std::string_view> lines = lines_of(without_byte_order_mark(text));
  std::vector<std::string_view> filled;
  for (const std::string_view line : lines) {
    if (!trimmed(line).empty() && trimmed(line)[0] != '#') filled.push_back(line);
  }
  table.separator = separator_of(filled);
  std::size_t number = 0;
  for (const std::string_view line : lines) {
    ++number;
    const std::string_view shown = trimmed(line);
    if (!shown.empty() && shown[0] != '#')
      table.rows.push_back(cells_of(line, number, table.separator));
  }
  return table;
}

std::string column_name(std::string_view heading) {
  std::string name(trimmed(heading.substr(0, unit_of(heading).from)));
  std::transform(name.begin(), name.end(), name.begin(),
                 [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
  std::replace(name.begin(), name.end(), '_', ' ');
  return name;
}

std::string column_unit(std::string_view heading) { return std::string(unit_of(heading).text); }

}  // namespace quoin::cases
