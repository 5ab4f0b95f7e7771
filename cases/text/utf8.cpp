// SPDX-License-Identifier: Apache-2.0
#include "cases/text/utf8.hpp"

#include <algorithm>
#include <array>

namespace quoin::cases {
namespace {

/// How many bytes a lead byte announces; 0 for a byte that leads nothing.
std::size_t announced(unsigned char lead) {
  if (lead < 0x80) return 1;
  if (lead >= 0xC2 && lead < 0xE0) return 2;
  if (lead >= 0xE0 && lead < 0xF0) return 3;
  if (lead >= 0xF0 && lead < 0xF5) return 4;
  return 0;
}

bool too_long_or_surrogate(char32_t code, std::size_t bytes) {
  constexpr std::array<char32_t, 5> least{0, 0, 0x80, 0x800, 0x10000};
  return code < least[bytes] || code > 0x10FFFF || (code >= 0xD800 && code <= 0xDFFF);
}

struct Span {
  char32_t first, last;
};

template <std::size_t N>
bool within(const std::array<Span, N>& spans, char32_t code) {
  return std::any_of(spans.begin(), spans.end(),
                     [&](Span span) { return span.first <= code && code <= span.last; });
}

}  // namespace

Character first_character(std::string_view text) {
  if (text.empty()) return {};
  const auto byte = [&](std::size_t i) { return static_cast<unsigned char>(text[i]); };
  const std::size_t bytes = announced(byte(0));
  if (bytes == 0 || bytes > text.size()) return {};
  if (bytes == 1) return {byte(0), 1};
  char32_t code = byte(0) & (0xFFu >> (bytes + 1));
  for (std::size_t i = 1; i < bytes; ++i) {
    if ((byte(i) & 0xC0u) != 0x80u) return {};
    code = (code << 6) | (byte(i) & 0x3Fu);
  }
  if (too_long_or_surrogate(code, bytes)) return {};
  return {code, bytes};
}

std::size_t characters(std::string_view text) {
  std::size_t count = 0;
  while (!text.empty()) {
    text.remove_prefix(std::max<std::size_t>(first_character(text).bytes, 1));
    ++count;
  }
  return count;
}

std::size_t width(char32_t code) {
  // The blocks that matter in practice: combining marks and zero-width signs, then East Asian wide.
  constexpr std::array<Span, 5> none{
      {{0x0300, 0x036F}, {0x1AB0, 0x1AFF}, {0x200B, 0x200F}, {0x20D0, 0x20FF}, {0xFE00, 0xFE0F}}};
  constexpr std::array<Span, 7> two{{{0x1100, 0x115F},
                                     {0x2E80, 0xA4CF},
                                     {0xAC00, 0xD7A3},
                                     {0xF900, 0xFAFF},
                                     {0xFF00, 0xFF60},
                                     {0x1F300, 0x1FAFF},
                                     {0x20000, 0x3FFFD}}};
  if (within(none, code)) return 0;
  return within(two, code) ? 2 : 1;
}

std::string shortened(std::string_view text, std::size_t limit) {
  std::size_t kept = 0;
  for (std::size_t count = 0; kept < text.size(); ++count) {
    if (count == limit) return std::string(text.substr(0, kept)) + "…";
    kept += std::max<std::size_t>(first_character(text.substr(kept)).bytes, 1);
  }
  return std::string(text);
}

}  // namespace quoin::cases
