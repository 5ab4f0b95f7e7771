// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings/findings.hpp"
#include "solver/findings/other_temperatures.hpp"

namespace quoin::solver {

/// A plane part of the detail on its own, by its sum of resistances, exact.
/// U from `heat`, surface factor and temperature from `surface`.
[[nodiscard]] PlainPart plain_part(const geometry::Flank& flank, const Physics& surface,
                                   const Physics& heat, const SpaceTemperatures& temperatures);

/// The linear thermal transmittances of a detail: psi = L2D - sum(U x length), by each way of
/// measuring the lengths of its flanks; the band is that of L2D. Empty where the flanks have no
/// lengths. All flanks must lie between the same two airs, but for a floor over a void: there L2D
/// is what passes between inside and outside by way of the void, too, whose temperature follows
/// from its heat balance, `losses` among it; nothing where that is not known. A floor on the ground
/// is taken off with its U by ISO 13370 times its length, and where `floor_alone` is given once
/// more by internal dimensions as L2D of that floor without the wall. Source: ISO 10211, both
/// options (memory).
[[nodiscard]] std::vector<LinearTransmittance> linear_transmittances(
    const std::vector<geometry::Flank>& flanks, const Solution& heat,
    const Solution* floor_alone = nullptr, const std::vector<OtherLoss>& losses = {});

}  // namespace quoin::solver
