// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace quoin::cases {

/// What a word of the trade, or of everyday, is called in a case file, as far as it is among the
/// known words: "plasterboard" is a gypsum board, "indoor" is inside. `word` in lower case, blanks
/// between its words. Empty where nothing is known of it.
[[nodiscard]] std::vector<std::string> synonyms(std::string_view word,
                                                const std::vector<std::string>& known);

}  // namespace quoin::cases
