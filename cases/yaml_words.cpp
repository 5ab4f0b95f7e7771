// SPDX-License-Identifier: Apache-2.0
#include "cases/yaml_words.hpp"

#include <fmt/format.h>

#include <algorithm>

#include "cases/words.hpp"

namespace quoin::cases {
namespace {

bool is_letter(char sign) { return (sign >= 'a' && sign <= 'z') || (sign >= 'A' && sign <= 'Z'); }

bool is_safe(std::string_view text) {
  if (text.empty() || !is_letter(text.front()) || text.back() == ' ') return false;
  if (text == "null" || text == "Null" || text == "NULL") return false;
  return std::all_of(text.begin(), text.end(), [](char sign) {
    return is_letter(sign) || (sign >= '0' && sign <= '9') || sign == ' ' || sign == '-' ||
           sign == '_';
  });
}

}  // namespace

std::string yaml_word(std::string_view text) {
  if (is_safe(text)) return std::string(text);
  std::string quoted = "\"";
  for (const char sign : text) {
    if (sign == '"' || sign == '\\') quoted += '\\';
    if (sign == '\n' || sign == '\t') {
      quoted += sign == '\n' ? "\\n" : "\\t";
    } else {
      quoted += sign;
    }
  }
  return quoted + '"';
}

void YamlMap::add(std::string_view key, std::string value) {
  entries_.push_back(fmt::format("{}: {}", yaml_word(key), value));
}

std::string YamlMap::text() const { return '{' + joined(entries_, ", ") + '}'; }

}  // namespace quoin::cases
