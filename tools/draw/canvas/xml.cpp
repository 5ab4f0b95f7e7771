// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/xml.hpp"

#include <algorithm>

#include "cases/text/harmless.hpp"
#include "cases/text/utf8.hpp"

namespace quoin::tools {
namespace {

bool xml_holds(char32_t code) { return code != 0xFFFE && code != 0xFFFF; }

std::string_view entity(char code) {
  switch (code) {
    case '&':
      return "&amp;";
    case '<':
      return "&lt;";
    case '>':
      return "&gt;";
    case '"':
      return "&quot;";
    case '\'':
      return "&#39;";
    default:
      return "";
  }
}

}  // namespace

std::string printable(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  while (!text.empty()) {
    const cases::Character next = cases::first_character(text);
    if (next.bytes == 0 || cases::is_harmful(next.code) || !xml_holds(next.code)) {
      safe += "\xEF\xBF\xBD";
    } else {
      safe += text.substr(0, next.bytes);
    }
    text.remove_prefix(std::max<std::size_t>(next.bytes, 1));
  }
  return safe;
}

std::string escaped(std::string_view text) {
  std::string safe;
  for (const char c : printable(text)) {
    if (const std::string_view name = entity(c); !name.empty()) {
      safe += name;
    } else {
      safe += c;
    }
  }
  return safe;
}

}  // namespace quoin::tools
