// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/case.hpp"
#include "materials/criterion.hpp"
#include "solver/findings.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// What a survey leaves open, as standard deviations: the humidity by what a good sensor errs, the
/// factor by what a tenth or two of conductivity and of surface resistance move it.
/// Common practice, no source.
inline constexpr double humidity_spread = 0.03;  // relative humidity
inline constexpr double factor_spread = 0.03;    // fRsi

/// How likely a spot breaks a criterion that looks at the humidity: the margin against the spreads
/// above and the numerical band, taken as independent and normal. Unlikely below 10 %, marginal
/// below 50 %, likely below 90 %. `outside`: degC.
[[nodiscard]] Grade grade_of(const materials::Test& test, const cases::Space& room,
                             const solver::Spot& spot, double outside);

}  // namespace quoin::tools
