// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "solver/solution.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What would be enough for each verdict of a variant, in the same order.
struct WhatIsEnough {
  std::vector<EnoughFor> each;
  std::vector<std::string> warnings;  ///< why something asked is not answered, in plain words
};

/// Humidity and temperature of the room in closed form, thickness and moisture, where the case asks
/// for them, by solving the section again until the criterion just holds. Unheated spaces keep
/// their temperature meanwhile. What the gate forbids is not called enough: a thickness over
/// masonry wetter than damp is withheld, and the moisture of insulated masonry ends at damp.
/// Throws: SolveError.
[[nodiscard]] WhatIsEnough what_is_enough(const SolvedVariant& solved,
                                          const solver::Effort& effort);

}  // namespace quoin::tools
