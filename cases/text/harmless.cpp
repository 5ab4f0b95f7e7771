// SPDX-License-Identifier: Apache-2.0
#include "cases/text/harmless.hpp"

#include <algorithm>

#include "cases/text/utf8.hpp"

namespace quoin::cases {

bool is_harmful(char32_t code) {
  const bool controls =
      (code < 0x20 && code != '\n' && code != '\t') || (code >= 0x7F && code < 0xA0);
  const bool separates = code == 0x2028 || code == 0x2029;
  const bool turns = code == 0x061C || (code >= 0x200E && code <= 0x200F) ||
                     (code >= 0x202A && code <= 0x202E) || (code >= 0x2066 && code <= 0x2069);
  const bool hides = code == 0x200B || code == 0x2060 || code == 0xFEFF;
  return controls || separates || turns || hides;
}

std::string harmless(std::string_view text) {
  std::string safe;
  safe.reserve(text.size());
  while (!text.empty()) {
    const Character next = first_character(text);
    const std::size_t bytes = std::max<std::size_t>(next.bytes, 1);
    if (next.bytes == 0 || is_harmful(next.code)) {
      safe += "\uFFFD";
    } else {
      safe += text.substr(0, bytes);
    }
    text.remove_prefix(bytes);
  }
  return safe;
}

}  // namespace quoin::cases
