// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "cases/text/fault_list.hpp"

namespace quoin::cases {

/// A text as the YAML parser may see it: no byte order mark, lines ended by LF, nothing
/// blank at the end.
/// Faults: the text is too long, is not UTF-8, or holds control characters.
[[nodiscard]] std::optional<std::string> plain_text_of(std::string_view text, FaultList& faults);

/// The text without the byte order mark some editors put first.
[[nodiscard]] std::string_view without_byte_order_mark(std::string_view text);

}  // namespace quoin::cases
