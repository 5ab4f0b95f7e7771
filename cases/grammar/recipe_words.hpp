// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

namespace quoin::cases {

/// The recipes that draw what the trade calls by another word: "reveal" for "jamb". Empty for words
/// that are not known.
[[nodiscard]] std::string_view recipes_for(std::string_view word);

}  // namespace quoin::cases
