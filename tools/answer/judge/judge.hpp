// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The surfaces that are judged: those of rooms inside, or all where there is no room.
[[nodiscard]] std::vector<const solver::AirSurface*> judged_surfaces(const SolvedVariant& solved);

/// That of one air, which is among them.
[[nodiscard]] const solver::AirSurface& surface_of(const SolvedVariant& solved, SpaceId air);

/// The humidity side of every inside air whose humidity is known, at its coldest spot.
[[nodiscard]] std::vector<AirHumidity> humidities(const SolvedVariant& solved);

/// That of one air; null where its humidity is not known.
[[nodiscard]] const AirHumidity* humidity_of(const SolvedVariant& solved, SpaceId air);

/// The surface that a criterion looks at: a threshold of fRsi that was stated for the resistance of
/// the heat-flow purpose looks at the same air as solved for that one.
[[nodiscard]] const solver::AirSurface& surface_for(const SolvedVariant& solved,
                                                    const solver::AirSurface& surface,
                                                    const cases::Criterion& criterion);

/// One criterion judged at the coldest spot of one surface, whose room has a humidity where it
/// looks at one.
[[nodiscard]] Verdict judged(const SolvedVariant& solved, const solver::AirSurface& surface,
                             const cases::Criterion& criterion);

/// What is looked at whatever the criteria: 80 % at the surface (ISO 13788).
[[nodiscard]] cases::Criterion mould_limit();

/// Every criterion judged on every judged surface it can be judged on.
[[nodiscard]] std::vector<Verdict> verdicts(const SolvedVariant& solved);

}  // namespace quoin::tools
