// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings/other_temperatures.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The losses of unheated spaces that the author stated.
[[nodiscard]] std::vector<solver::OtherLoss> losses_of(const cases::Variant& variant);

/// The temperatures of all spaces where those inside and outside have these, degC: unheated ones
/// follow from their b, from their heat balance, or from the share they have in the case as stated.
[[nodiscard]] solver::SpaceTemperatures temperatures_with(const SolvedVariant& solved,
                                                          const solver::SpaceTemperatures& airs);

/// The same as a case file that states these temperatures would have it: unheated spaces follow by
/// their b or their heat balance only; one whose temperature is stated has that in `airs`.
[[nodiscard]] solver::SpaceTemperatures temperatures_as_stated(
    const SolvedVariant& solved, const solver::SpaceTemperatures& airs);

/// The same where only the temperature of one room is another, degC.
[[nodiscard]] solver::SpaceTemperatures temperatures_with_room_at(const SolvedVariant& solved,
                                                                  SpaceId room, double inside);

/// Whether the author states the temperature of an air: it follows from nothing else.
[[nodiscard]] bool states_its_temperature(const cases::Variant& variant, SpaceId air);

/// The temperatures of the air of all spaces in a month of the climate, degC: every room inside has
/// that of the climate, where it states one, or its own.
[[nodiscard]] solver::SpaceTemperatures airs_in_month(const SolvedVariant& solved,
                                                      std::size_t month);

/// The same as surfaces feel them, degC: less what evaporation cools, which goes on all year as in
/// the case as stated. A clear sky is left out: a clear night is no mean of a month.
[[nodiscard]] solver::SpaceTemperatures temperatures_in_month(const SolvedVariant& solved,
                                                              std::size_t month);

/// How much colder than its air evaporation makes a space to its surfaces, K.
[[nodiscard]] double cooling_by_water(const cases::Space& space);

/// The vapour pressure, Pa, of a room at these temperatures, degC, and that humidity outside: by
/// its own rule, or with its stated humidity.
[[nodiscard]] double vapour_pressure_in(const cases::Space& room, double inside, double outside,
                                        double outside_humidity);

}  // namespace quoin::tools
