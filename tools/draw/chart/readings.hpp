// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/answer/results/results.hpp"
#include "tools/draw/canvas/picture.hpp"

namespace quoin::tools {

/// The readings of a survey in the ranges that the best explanation expects, along the inside
/// surface that most of them lie on. Empty where nothing is told.
[[nodiscard]] Picture drawn_readings(const Results& results);

}  // namespace quoin::tools
