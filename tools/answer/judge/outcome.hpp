// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The chance of passing a limit of humidity above which what holds is only marginal.
inline constexpr double marginal_chance = 0.10;  // common practice, no source

/// How good news an outcome is.
[[nodiscard]] Tone tone_of(Outcome::Kind kind);

/// Whether passing the limit of a criterion means mould: where its name says so; else from 70 % on,
/// below which none grows (common practice, no source), unless the name says what else it is for.
[[nodiscard]] bool is_for_mould(const cases::Criterion& criterion);

/// What is looked at in every room: the criteria and, unless one for mould asks as much, 80 %.
[[nodiscard]] std::vector<cases::Criterion> looked_at(const cases::Variant& variant);

/// One outcome for each room inside that has a surface, in the order of its surfaces. Looks at the
/// criteria and, whatever they are, at the dew point and at 80 % (ISO 13788). Needs humidity and
/// verdicts to be filled in.
[[nodiscard]] std::vector<Outcome> outcomes(const SolvedVariant& solved);

/// Of the surface of one air. `chance` that a limit of humidity is passed there, 0 to 1; absent:
/// the highest of what the spreads of a survey make of each limit.
[[nodiscard]] Outcome outcome_in(const SolvedVariant& solved, const solver::AirSurface& surface,
                                 std::optional<double> chance = std::nullopt);

/// That of one room; null where it has none.
[[nodiscard]] const Outcome* outcome_of(const SolvedVariant& solved, SpaceId air);

/// The worst of a variant: by kind, of these the likeliest to fail; null where no room has a
/// surface.
[[nodiscard]] const Outcome* worst_outcome(const SolvedVariant& solved);

/// Whether any room of any variant comes out bad.
[[nodiscard]] bool any_bad(const Results& results);

}  // namespace quoin::tools
