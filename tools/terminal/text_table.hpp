// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/answer/results/outcome.hpp"

namespace quoin::tools {

/// How a terminal shows text.
struct TextStyle {
  bool ascii = false;   ///< nothing beyond ASCII: signs get a spelling, foreign letters a '?'
  bool colour = false;  ///< ANSI colours
  std::size_t width = 80;
};

/// Text as the terminal may have it: control characters, signs that turn the direction of writing
/// and bytes that are not UTF-8 become U+FFFD, line breaks a space; all of it ASCII where the style
/// says so.
[[nodiscard]] std::string harmless(std::string_view text, const TextStyle& style);

/// A text of our own in lines, spelt in ASCII where the style says so; else as it is.
[[nodiscard]] std::string spelt_lines(std::string_view text, const TextStyle& style);

/// Columns that harmless text takes on a terminal.
[[nodiscard]] std::size_t columns_of(std::string_view text);

/// Harmless text, its end replaced by an ellipsis where it takes more than `columns`.
[[nodiscard]] std::string cut_to(std::string_view text, std::size_t columns,
                                 const TextStyle& style);

/// Harmless text in a tone.
[[nodiscard]] std::string toned(std::string_view text, Tone tone, const TextStyle& style);

/// A paragraph broken at spaces to the width of the style, every line `indent` columns in.
[[nodiscard]] std::string paragraph(std::string_view text, std::size_t indent,
                                    const TextStyle& style);

/// Rows of cells in columns. The first column is set left and gives way where the table would be
/// wider than the terminal; others are set left or right.
class TextTable {
 public:
  explicit TextTable(std::string_view alignment) : alignment_(alignment) {}  ///< 'l' or 'r' each

  struct Cell {
    std::string text;
    Tone tone = Tone::plain;
  };
  /// Missing cells at the end stay empty.
  void add(std::vector<Cell> row) { rows_.push_back(std::move(row)); }

  [[nodiscard]] std::string text(const TextStyle& style) const;

 private:
  std::string alignment_;
  std::vector<std::vector<Cell>> rows_;
};

}  // namespace quoin::tools
