// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Finds how fast water leaves the wet surfaces of a solved variant and brings both solutions to
/// the cooling that goes with it. The rate depends on the temperature of the surface (its mean is
/// taken) and that on the rate: iterated, each step a weighted sum of the basis fields. Returns a
/// remark for each wet space.
/// Throws: SolveError where the iteration does not settle.
[[nodiscard]] std::vector<std::string> evaporate(SolvedVariant& solved);

}  // namespace quoin::tools
