// SPDX-License-Identifier: Apache-2.0
#include "cases/text/plain_text.hpp"

#include <fmt/format.h>

#include "cases/text/utf8.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {
namespace {

bool is_control(char32_t code) {
  return (code < 0x20 && code != '\t') || (code >= 0x7F && code < 0xA0);
}

/// Whether every character of a line may stand in a case file; the first that may not is a fault.
bool is_plain(std::string_view line, std::size_t number, FaultList& faults) {
  std::size_t at = 0;
  while (at < line.size()) {
    const Character next = first_character(line.substr(at));
    if (next.bytes == 0) {
      faults.add({number, at + 1},
                 {"this is not UTF-8 text",
                  fmt::format("the byte {:02X}", static_cast<unsigned char>(line[at])),
                  "a text file", "save the file as UTF-8 in the editor"});
      return false;
    }
    if (is_control(next.code)) {
      faults.add({number, at + 1}, {"a control character stands in the text",
                                    fmt::format("U+{:04X}", static_cast<unsigned>(next.code)),
                                    "a text file", "delete the character; it may be invisible"});
      return false;
    }
    at += next.bytes;
  }
  return true;
}

}  // namespace

std::string_view without_byte_order_mark(std::string_view text) {
  constexpr std::string_view mark = "\xEF\xBB\xBF";
  if (text.substr(0, mark.size()) == mark) text.remove_prefix(mark.size());
  return text;
}

std::optional<std::string> plain_text_of(std::string_view text, FaultList& faults) {
  if (text.size() > limits::bytes) {
    faults.add(
        {},
        {"the file is too long for a case", fmt::format("more than {} bytes", limits::bytes),
         fmt::format("at most {} bytes", limits::bytes), "check that this is the file you mean"});
    return std::nullopt;
  }
  std::string plain;
  plain.reserve(text.size() + 1);
  std::size_t number = 0;
  for (const std::string_view line : lines_of(without_byte_order_mark(text))) {
    if (!is_plain(line, ++number, faults)) return std::nullopt;
    plain += line;
    plain += '\n';
  }
  // The parser takes an open quote as closed if blank text follows it at the end.
  plain.erase(plain.find_last_not_of(" \t\n") + 1);
  return plain;
}

}  // namespace quoin::cases
