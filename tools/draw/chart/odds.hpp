// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/answer/results/results.hpp"
#include "tools/draw/canvas/picture.hpp"

namespace quoin::tools {

/// How many times worse each explanation fits than the best, with the region in which readings
/// cannot tell, and what to measure next. Empty where nothing is told.
[[nodiscard]] Picture drawn_odds(const Results& results);

}  // namespace quoin::tools
