// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/other_temperatures.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// The losses of unheated spaces that the author stated.
[[nodiscard]] std::vector<solver::OtherLoss> losses_of(const cases::Variant& variant);

/// The temperatures of all spaces where those inside and outside have these, degC: unheated ones
/// follow from their b, from their heat balance, or from the share they have in the case as stated.
[[nodiscard]] solver::SpaceTemperatures temperatures_with(const SolvedVariant& solved,
                                                          const solver::SpaceTemperatures& airs);

/// The temperatures of all spaces when the outside has this one and a room that one, degC; other
/// rooms keep theirs.
[[nodiscard]] solver::SpaceTemperatures temperatures_with(const SolvedVariant& solved, SpaceId room,
                                                          double inside, double outside);

/// The vapour pressure, Pa, of a room at these temperatures, degC, and that humidity outside: by
/// its own rule, or with its stated humidity.
[[nodiscard]] double vapour_pressure_in(const cases::Space& room, double inside, double outside,
                                        double outside_humidity);

}  // namespace quoin::tools
