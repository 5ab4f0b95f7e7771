// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "cases/house.hpp"
#include "tools/answer/run.hpp"

namespace quoin::tools {

/// The whole pipeline for the sections of a house: one survey of all, then every variant of each.
/// Throws: SolveError.
[[nodiscard]] std::vector<Results> results_of(const cases::House& house,
                                              const solver::Effort& effort,
                                              const Progress& progress = {});

}  // namespace quoin::tools
