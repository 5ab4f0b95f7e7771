// SPDX-License-Identifier: Apache-2.0
#include "cases/text/yaml_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cases/text/harmless.hpp"
#include "cases/text/utf8.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

/// YAML takes a longer key for none unless it is announced.
constexpr std::size_t longest_key = 1000;

bool is_letter(char sign) { return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z'); }

bool is_safe(std::string_view text) {
  if (text.empty() || !is_letter(text.front()) || text.back() == ' ') return false;
  if (text == "null" || text == "Null" || text == "NULL") return false;
  return std::all_of(text.begin(), text.end(), [](char sign) {
    return is_letter(sign) || (sign >= '0' && sign <= '9') || sign == ' ' || sign == '-' ||
           sign == '_';
  });
}

/// One character as it stands in double quotes. What a case file may not hold is spelt out.
std::string quoted_character(std::string_view bytes, char32_t code) {
  if (code == '"' || code == '\\') return '\\' + std::string(bytes);
  if (code == '\n') return "\\n";
  if (code == '\t') return "\\t";
  const bool no_character = code == 0xFEFF || (code >= 0xFFFE && code <= 0xFFFF);
  if (!is_harmful(code) && !no_character) return std::string(bytes);
  return code < 0x100 ? fmt::format("\\x{:02x}", static_cast<unsigned>(code))
                      : fmt::format("\\u{:04x}", static_cast<unsigned>(code));
}

}  // namespace

std::string yaml_word(std::string_view text) {
  if (is_safe(text)) return std::string(text);
  std::string quoted = "\"";
  while (!text.empty()) {
    const Character next = first_character(text);
    const std::size_t bytes = std::max<std::size_t>(next.bytes, 1);
    quoted += quoted_character(text.substr(0, bytes), next.code);
    text.remove_prefix(bytes);
  }
  return quoted + '"';
}

std::string yaml_entry(std::string_view key, std::string_view value, std::string_view between) {
  const std::string word = yaml_word(key);
  const bool is_long = word.size() > longest_key;
  return fmt::format("{}{}{}: {}", is_long ? "? " : "", word, is_long ? between : "", value);
}

void YamlMap::add(std::string_view key, std::string value) {
  entries_.push_back(yaml_entry(key, value, " "));
}

std::string YamlMap::text() const { return '{' + joined(entries_, ", ") + '}'; }

}  // namespace quoin::cases
