// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The places of fabric that are the coldest of an air's surfaces in some month, where none of its
/// cold spots as stated is as cold then: months that give several spaces other temperatures may
/// move it. Their temperatures are those as stated, their bands the widest of the known spots'.
/// `months`: the temperatures of all spaces in each.
[[nodiscard]] std::vector<solver::Spot> colder_in_months(
    const SolvedVariant& solved, const solver::AirSurface& surface,
    const std::vector<solver::SpaceTemperatures>& months);

}  // namespace quoin::tools
