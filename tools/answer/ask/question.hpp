// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/model/case.hpp"
#include "materials/surface_resistance.hpp"
#include "solver/solution.hpp"

namespace quoin::tools {

/// What is asked of a variant for one purpose: factors and cold spots by that of surface
/// temperatures, couplings by that of heat flow.
[[nodiscard]] solver::Question question_of(const cases::Variant& variant,
                                           materials::Purpose purpose);

}  // namespace quoin::tools
