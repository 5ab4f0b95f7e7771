// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

[[nodiscard]] std::string_view words_for(Outcome::Kind kind);

/// The outcome in a word or two: its kind, and by which criterion where that is no matter of
/// wetness.
[[nodiscard]] std::string badge(const Outcome& outcome);

/// The limit that decided, as people write it: "80 %", "fRsi 0.75".
[[nodiscard]] std::string limit_words(const Outcome& outcome);

/// The outcome in a clause, with the numbers it is decided by. Figures are rounded no further than
/// the clause stays true.
[[nodiscard]] std::string words_for(const SolvedVariant& solved, const solver::AirSurface& surface,
                                    const Outcome& outcome);

/// Gives every outcome of a solved variant its words.
void put_into_words(SolvedVariant& solved);

}  // namespace quoin::tools
