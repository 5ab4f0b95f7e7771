// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

namespace quoin::cases {

/// The first character of a text and the bytes it takes. Bytes 0: not valid UTF-8 there.
struct Character {
  char32_t code = 0;
  std::size_t bytes = 0;
};
[[nodiscard]] Character first_character(std::string_view text);

/// The number of characters. Bytes that are not UTF-8 count one each.
[[nodiscard]] std::size_t characters(std::string_view text);

/// Columns a character takes on a terminal: 0 for combining marks, 2 for wide ones, else 1.
[[nodiscard]] std::size_t width(char32_t code);

/// The text if it has no more than `limit` characters, else its beginning and an ellipsis.
[[nodiscard]] std::string shortened(std::string_view text, std::size_t limit);

}  // namespace quoin::cases
