// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

[[nodiscard]] std::string_view words_for(Outcome::Kind kind);

/// "good", "doubtful", "bad" or "plain".
[[nodiscard]] std::string_view word_for(Tone tone);

/// The outcome in a few words: its kind, and which limits fail where that is no matter of wetness.
[[nodiscard]] std::string badge(const Outcome& outcome);

/// What decided, by name: of limits that fail, all of them.
[[nodiscard]] std::string deciders(const Outcome& outcome);

/// A broken limit with its numbers: "'fRsi' (fRsi 0.62, where 0.75 is asked for)".
[[nodiscard]] std::string words_for(const BrokenLimit& limit);

/// What must be named beside that which decided: every other broken limit but those for mould where
/// the spot is as wet as they say, or wetter.
[[nodiscard]] std::vector<BrokenLimit> also_broken(const Outcome& outcome);

/// The outcome in a clause, with the numbers it is decided by. Figures are rounded no further than
/// the clause stays true.
[[nodiscard]] std::string words_for(const SolvedVariant& solved, const solver::AirSurface& surface,
                                    const Outcome& outcome);

/// Gives every outcome of a solved variant its words.
void put_into_words(SolvedVariant& solved);

}  // namespace quoin::tools
