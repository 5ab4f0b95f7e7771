// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/results.hpp"
#include "tools/text_table.hpp"

namespace quoin::tools {

/// What would be enough, a row for each variant, room and criterion. Empty where nothing is asked
/// that depends on humidity, thickness or moisture.
[[nodiscard]] std::string enough_text(const Results& results, const TextStyle& style);

/// "found", "holds always", "holds never", "up to damp" or "dry first".
[[nodiscard]] std::string_view words_for(Threshold::Kind kind);

}  // namespace quoin::tools
