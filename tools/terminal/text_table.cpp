// SPDX-License-Identifier: Apache-2.0
#include "tools/terminal/text_table.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <utility>

#include "cases/text/harmless.hpp"
#include "cases/text/utf8.hpp"

namespace quoin::tools {
namespace {

constexpr char32_t replacement = U'\uFFFD';

/// The signs that our own words use, in ASCII.
std::string_view spelling(char32_t code) {
  constexpr std::array<std::pair<char32_t, std::string_view>, 22> spellings{
      {{U'°', ""},  {U'±', "+/-"},   {U'·', "."},  {U'–', "-"},  {U'—', "-"},   {U'…', "..."},
       {U'’', "'"}, {U'‘', "'"},     {U'“', "\""}, {U'”', "\""}, {U'ψ', "psi"}, {U'λ', "lambda"},
       {U'²', "2"}, {U'³', "3"},     {U'●', "#"},  {U'−', "-"},  {U'×', "x"},   {U'μ', "mu"},
       {U'µ', "u"}, {U'θ', "theta"}, {U'≥', ">="}, {U'≤', "<="}}};
  for (const auto& [sign, ascii] : spellings) {
    if (sign == code) return ascii;
  }
  return "?";
}

std::string padded(std::string_view text, std::size_t columns, char alignment) {
  const std::string space(columns - std::min(columns, columns_of(text)), ' ');
  return alignment == 'r' ? space + std::string(text) : std::string(text) + space;
}

}  // namespace

std::string harmless(std::string_view text, const TextStyle& style) {
  std::string safe;
  safe.reserve(text.size());
  while (!text.empty()) {
    const cases::Character next = cases::first_character(text);
    const std::string_view bytes = text.substr(0, std::max<std::size_t>(next.bytes, 1));
    const bool is_space = next.code == '\n' || next.code == '\t';
    const bool harmful = next.bytes == 0 || cases::is_harmful(next.code);
    if (next.bytes != 0 && is_space) {
      safe += ' ';
    } else if (harmful) {
      safe += style.ascii ? "?" : "\uFFFD";
    } else if (style.ascii && next.code >= 0x80) {
      safe += spelling(next.code);
    } else {
      safe += bytes;
    }
    text.remove_prefix(bytes.size());
  }
  return safe;
}

std::string spelt_lines(std::string_view text, const TextStyle& style) {
  if (!style.ascii) return std::string(text);
  std::string all;
  while (!text.empty()) {
    const std::size_t end = std::min(text.find('\n'), text.size());
    all += harmless(text.substr(0, end), style);
    if (end < text.size()) all += '\n';
    text.remove_prefix(std::min(end + 1, text.size()));
  }
  return all;
}

std::size_t columns_of(std::string_view text) {
  std::size_t columns = 0;
  while (!text.empty()) {
    const cases::Character next = cases::first_character(text);
    columns += cases::width(next.bytes == 0 ? replacement : next.code);
    text.remove_prefix(std::max<std::size_t>(next.bytes, 1));
  }
  return columns;
}

std::string cut_to(std::string_view text, std::size_t columns, const TextStyle& style) {
  if (columns_of(text) <= columns) return std::string(text);
  const std::string_view ellipsis = style.ascii ? "..." : "…";
  const std::size_t room = columns - std::min(columns, columns_of(ellipsis));
  std::size_t used = 0, kept = 0;
  while (kept < text.size()) {
    const cases::Character next = cases::first_character(text.substr(kept));
    if (used + cases::width(next.code) > room) break;
    used += cases::width(next.code);
    kept += std::max<std::size_t>(next.bytes, 1);
  }
  return std::string(text.substr(0, kept)) + std::string(ellipsis);
}

std::string toned(std::string_view text, Tone tone, const TextStyle& style) {
  if (!style.colour || tone == Tone::plain) return std::string(text);
  constexpr std::array<std::string_view, 5> codes{"0", "1", "32", "33", "1;31"};
  return fmt::format("\x1b[{}m{}\x1b[0m", codes[static_cast<std::size_t>(tone)], text);
}

std::string paragraph(std::string_view text, std::size_t indent, const TextStyle& style) {
  const std::string safe = harmless(text, style);
  const std::size_t room = style.width > indent + 10 ? style.width - indent : 10;
  std::string all, line;
  const auto end_line = [&] {
    if (!line.empty()) all += std::string(indent, ' ') + line + '\n';
    line.clear();
  };
  std::string_view rest = safe;
  while (!rest.empty()) {
    const std::size_t space = std::min(rest.find(' '), rest.size());
    const std::string word = cut_to(rest.substr(0, space), room, style);
    if (!line.empty() && columns_of(line) + 1 + columns_of(word) > room) end_line();
    if (!word.empty()) line += (line.empty() ? "" : " ") + word;
    rest.remove_prefix(std::min(space + 1, rest.size()));
  }
  end_line();
  return all;
}

std::string TextTable::text(const TextStyle& style) const {
  constexpr std::size_t gap = 2;
  const std::size_t count = alignment_.size();
  std::vector<std::size_t> widths(count);
  for (const auto& row : rows_) {
    for (std::size_t c = 0; c < row.size(); ++c) {
      widths[c] = std::max(widths[c], columns_of(harmless(row[c].text, style)));
    }
  }
  std::size_t others = 0;
  for (std::size_t c = 1; c < count; ++c) others += gap + widths[c];
  constexpr std::size_t least = 8;
  if (widths[0] + others > style.width) {
    widths[0] = std::max(least, style.width - std::min(style.width, others));
  }
  std::string all;
  for (const auto& row : rows_) {
    std::string line;
    for (std::size_t c = 0; c < row.size(); ++c) {
      const std::string cell = cut_to(harmless(row[c].text, style), widths[c], style);
      const std::string set = padded(cell, widths[c], alignment_[c]);
      line += (c == 0 ? "" : std::string(gap, ' ')) + toned(set, row[c].tone, style);
    }
    line.erase(line.find_last_not_of(' ') + 1);
    all += line + '\n';
  }
  return all;
}

}  // namespace quoin::tools
