// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/solution.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// What would be enough for each verdict of a variant: humidity and temperature of the room in
/// closed form, thickness and moisture, where the case asks for them, by solving the section again
/// until the criterion just holds. Unheated spaces keep their temperature meanwhile.
/// Throws: SolveError.
[[nodiscard]] std::vector<EnoughFor> what_is_enough(const SolvedVariant& solved,
                                                    const solver::Effort& effort);

}  // namespace quoin::tools
