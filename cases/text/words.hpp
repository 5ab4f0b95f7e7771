// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <string>
#include <string_view>
#include <vector>

namespace quoin::cases {

/// The fewest insertions, deletions, replacements and swaps of neighbours that turn a into b.
[[nodiscard]] std::size_t edit_distance(std::string_view a, std::string_view b);

/// The known word most like a word; empty where none is like it. The first of equals.
[[nodiscard]] std::string nearest(std::string_view word, const std::vector<std::string>& known);

/// A word of the author between single quotes.
[[nodiscard]] std::string quoted(std::string_view word);

/// The few known words that a word may stand for: those it is a synonym of, the nearest, else those
/// that hold it ("brick"), else those that hold its last word ("rock wool").
[[nodiscard]] std::vector<std::string> likely(std::string_view word,
                                              const std::vector<std::string>& known);

/// That as a question; empty where no known word is like it.
[[nodiscard]] std::string did_you_mean(std::string_view word,
                                       const std::vector<std::string>& known);

/// The words with a separator between them.
[[nodiscard]] std::string joined(const std::vector<std::string>& words, std::string_view separator);

}  // namespace quoin::cases
