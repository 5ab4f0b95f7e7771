// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

namespace quoin::cases {

/// Whether a character steers a terminal, turns the direction of writing or takes no room, so that
/// a text would not be what it seems: controls but for the line feed and the tab, separators of
/// lines and paragraphs, marks of direction, spaces of no width, byte order marks.
[[nodiscard]] bool is_harmful(char32_t code);

/// A text with each harmful character, and each byte that is not UTF-8, replaced by U+FFFD.
[[nodiscard]] std::string harmless(std::string_view text);

}  // namespace quoin::cases
