// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/survey/parametrised.hpp"

namespace quoin::testing {

/// The temperatures of a section after its airs have changed: implicit steps of half an hour on the
/// mesh of the section, from the steady field of the first hour on. What readings are compared with
/// knows nothing of this.
/// `heat_capacity`: of each region, J/(m3 K). `hourly`: of each air, degC, all as long.
/// Shape: nodes.
[[nodiscard]] std::vector<double> marched(const solver::Parametrised& section,
                                          const solver::Setting& setting,
                                          const std::vector<double>& heat_capacity,
                                          const std::vector<std::vector<double>>& hourly);

}  // namespace quoin::testing
