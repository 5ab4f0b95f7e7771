// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/answer/results/results.hpp"
#include "tools/draw/canvas/picture.hpp"

namespace quoin::tools {

/// What a survey tells: the readings in the ranges that the best explanation expects, along the
/// inside surface they lie on, and how much worse other explanations fit. Empty where nothing is
/// told.
[[nodiscard]] Picture drawn_readings(const Results& results);

}  // namespace quoin::tools
