// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/results.hpp"
#include "tools/text_table.hpp"

namespace quoin::tools {

/// The findings of a case for the terminal: a table with a row for each variant, each verdict in
/// plain words, what the variants change, warnings, and the heat flows.
[[nodiscard]] std::string text_report(const Results& results, const TextStyle& style);

/// A verdict in one or two words, for tables: "safe", "mould", "wet" ...
struct ShortVerdict {
  std::string_view words;
  Tone tone = Tone::plain;
};
[[nodiscard]] ShortVerdict short_verdict(const SolvedVariant& solved, SpaceId air);

}  // namespace quoin::tools
