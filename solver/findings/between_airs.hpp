// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/findings/question.hpp"

namespace quoin::solver {

// Everything here is linear in the temperatures of the spaces, so a section is solved for spaces
// from 0, the coldest, to 1, the warmest, and the answer brought to what they are. Where grids are
// cut and which spots are cold then depends on nothing but where each space lies between the two,
// to the last bit: cases that differ in nothing else have one answer between 0 and 1.

/// The question for spaces from 0 to 1.
[[nodiscard]] Question between_airs(const Question& question);

/// The answer to that question for the temperatures asked first, degC. Factors, couplings and basis
/// fields are the same for both.
[[nodiscard]] Solution at_temperatures(Solution between, const SpaceTemperatures& temperatures);

}  // namespace quoin::solver
