// SPDX-License-Identifier: Apache-2.0
#include "tools/output/text/table.hpp"

#include <algorithm>
#include <numeric>
#include <string_view>
#include <vector>

#include "cases/text/utf8.hpp"

namespace quoin::tools {
namespace {

constexpr std::size_t gap = 2;          // columns of the terminal between those of the table
constexpr std::size_t widest = 34;      // where a column cannot be as wide as it likes
constexpr std::size_t widest_key = 22;  // the same of the first ones, which are repeated
constexpr std::size_t least_key = 6;

using Lines = std::vector<std::string>;

/// The longest beginning of a text that fits a width, of one character at least.
std::size_t beginning(std::string_view text, std::size_t width) {
  std::size_t bytes = 0, used = 0;
  while (bytes < text.size()) {
    const cases::Character next = cases::first_character(text.substr(bytes));
    used += cases::width(next.code);
    if (bytes > 0 && used > width) break;
    bytes += std::max<std::size_t>(next.bytes, 1);
  }
  return bytes;
}

/// Harmless text in lines of a width, broken at spaces; a longer word goes on in the next line.
Lines broken(std::string_view text, std::size_t width) {
  Lines lines;
  std::string line;
  const auto end_line = [&] {
    if (!line.empty()) lines.push_back(std::move(line));
    line.clear();
  };
  while (!text.empty()) {
    const std::size_t space = std::min(text.find(' '), text.size());
    std::string_view word = text.substr(0, space);
    if (!line.empty() && columns_of(line) + 1 + columns_of(word) > width) end_line();
    while (columns_of(word) > width) {
      const std::size_t bytes = beginning(word, width);
      lines.emplace_back(word.substr(0, bytes));
      word.remove_prefix(bytes);
    }
    if (!word.empty()) line += (line.empty() ? "" : " ") + std::string(word);
    text.remove_prefix(std::min(space + 1, text.size()));
  }
  end_line();
  return lines;
}

/// A table as it will be printed: headings and cells harmless, columns with their widths.
class Grid {
 public:
  Grid(const report::Table& table, const TextStyle& style) : table_(table), style_(style) {
    for (const report::Column& column : table.columns)
      headings_.push_back(harmless(column.heading, style));
    for (const auto& row : table.rows) {
      cells_.emplace_back();
      for (const report::Cell& cell : row)
        cells_.back().push_back(harmless(report::text_of(cell), style));
    }
    widths_ = natural();
    if (total(widths_) <= style.width) return;
    for (std::size_t c = table.keys; c < widths_.size(); ++c)
      widths_[c] = std::min(std::max(longest_word(headings_[c]), content(c)), widest);
    for (std::size_t c = 0; c < table.keys; ++c) widths_[c] = std::min(widths_[c], key_width());
  }

  [[nodiscard]] std::string text() const {
    std::string all;
    std::vector<std::size_t> group = keys();
    for (std::size_t c = table_.keys; c < widths_.size(); ++c) {
      const std::size_t with = width_of(group) + gap + widths_[c];
      if (group.size() > table_.keys && with > style_.width) {
        all += part(group) + "\n";
        group = keys();
      }
      group.push_back(c);
    }
    return all + part(group);
  }

 private:
  [[nodiscard]] std::size_t content(std::size_t column) const {
    std::size_t most = 1;
    for (const auto& row : cells_) most = std::max(most, columns_of(row[column]));
    return most;
  }

  [[nodiscard]] std::vector<std::size_t> natural() const {
    std::vector<std::size_t> widths;
    for (std::size_t c = 0; c < headings_.size(); ++c)
      widths.push_back(std::max(columns_of(headings_[c]), content(c)));
    return widths;
  }

  static std::size_t total(const std::vector<std::size_t>& widths) {
    return std::accumulate(widths.begin(), widths.end(), std::size_t{0}) +
           gap * (widths.size() - std::min<std::size_t>(widths.size(), 1));
  }

  /// Of each key where the widest of the other columns is to stand beside all of them.
  [[nodiscard]] std::size_t key_width() const {
    std::size_t other = 0;
    for (std::size_t c = table_.keys; c < widths_.size(); ++c) other = std::max(other, widths_[c]);
    const std::size_t room = style_.width - std::min(style_.width, other);
    const std::size_t each = room / table_.keys;
    return std::clamp<std::size_t>(each - std::min(each, gap), least_key, widest_key);
  }

  static std::size_t longest_word(std::string_view words) {
    std::size_t longest = 0;
    while (!words.empty()) {
      const std::size_t end = std::min(words.find(' '), words.size());
      longest = std::max(longest, columns_of(words.substr(0, end)));
      words.remove_prefix(std::min(end + 1, words.size()));
    }
    return longest;
  }

  [[nodiscard]] std::vector<std::size_t> keys() const {
    std::vector<std::size_t> keys(table_.keys);
    std::iota(keys.begin(), keys.end(), std::size_t{0});
    return keys;
  }

  [[nodiscard]] std::size_t width_of(const std::vector<std::size_t>& columns) const {
    std::vector<std::size_t> widths;
    for (const std::size_t c : columns) widths.push_back(widths_[c]);
    return total(widths);
  }

  [[nodiscard]] bool is_number(std::size_t column) const {
    return report::is_number(table_.rows.front()[column]);
  }

  /// One row in as many lines as its cells take. `tones`: of each column.
  [[nodiscard]] std::string lines(const std::vector<std::size_t>& columns,
                                  const std::vector<std::string>& cells,
                                  const std::vector<Tone>& tones) const {
    std::vector<Lines> all;
    std::size_t height = 1;
    for (const std::size_t c : columns) {
      all.push_back(broken(cells[c], widths_[c]));
      height = std::max(height, all.back().size());
    }
    std::string text;
    for (std::size_t l = 0; l < height; ++l) {
      std::string line;
      for (std::size_t k = 0; k < columns.size(); ++k) {
        const std::size_t width = widths_[columns[k]];
        const std::string cell = l < all[k].size() ? all[k][l] : std::string();
        const std::string space(width - std::min(width, columns_of(cell)), ' ');
        const std::string shown = cell.empty() ? cell : toned(cell, tones[columns[k]], style_);
        line += (k == 0 ? "" : std::string(gap, ' ')) +
                (is_number(columns[k]) ? space + shown : shown + space);
      }
      line.erase(line.find_last_not_of(' ') + 1);
      text += line + '\n';
    }
    return text;
  }

  [[nodiscard]] std::string part(const std::vector<std::size_t>& columns) const {
    std::string text = lines(columns, headings_, std::vector<Tone>(headings_.size(), Tone::strong));
    for (std::size_t r = 0; r < cells_.size(); ++r) {
      std::vector<Tone> tones;
      for (const report::Cell& cell : table_.rows[r]) tones.push_back(cell.tone);
      text += lines(columns, cells_[r], tones);
    }
    return text;
  }

  const report::Table& table_;
  const TextStyle& style_;
  std::vector<std::string> headings_;
  std::vector<std::vector<std::string>> cells_;
  std::vector<std::size_t> widths_;
};

}  // namespace

std::string table_text(const report::Table& table, const TextStyle& style) {
  return table.rows.empty() ? "" : Grid(table, style).text();
}

}  // namespace quoin::tools
