// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

namespace quoin::cases {

/// Whether a character steers a terminal or turns the direction of writing, so that a text would
/// not be what it seems: controls but for the line feed and the tab, separators of lines and
/// paragraphs, marks of direction.
[[nodiscard]] bool is_harmful(char32_t code);

/// A text with each harmful character, and each byte that is not UTF-8, replaced by U+FFFD.
[[nodiscard]] std::string harmless(std::string_view text);

}  // namespace quoin::cases
