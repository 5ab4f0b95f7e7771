// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

namespace quoin::door {

// Changes of a case file in its author's text: all but the one value stays as it is, comments,
// order and spelling too. A value said once and used by several (an alias) changes for all of them.
// Each result is read again and given back only where it says what was asked and nothing else.
// Paths as in values(). Throws: InputError where there is no such place, or where the text cannot
// be changed in place.

/// With another value in place of a scalar. The same value gives the same text.
[[nodiscard]] std::string edited_text(std::string_view text, std::string_view path,
                                      std::string_view value);

/// With what a piece of YAML in one line says at a path: in place of what is there, or as a new
/// key; the maps on the way are made where they are missing.
[[nodiscard]] std::string placed_text(std::string_view text, std::string_view path,
                                      std::string_view yaml);

/// With it as a new item of a list, before the one at the path; one past the last: behind it.
[[nodiscard]] std::string inserted_text(std::string_view text, std::string_view path,
                                        std::string_view yaml);

/// Without a key or an item.
[[nodiscard]] std::string removed_text(std::string_view text, std::string_view path);

}  // namespace quoin::door
