// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

#include "tools/answer/results/results.hpp"
#include "tools/draw/canvas/picture.hpp"

namespace quoin::tools {

/// In how many of 100 cases each variant breaks a criterion, and how far each input that is not
/// known moves it in the first variant and in a chosen one. Empty where no chance is told.
[[nodiscard]] Picture drawn_chances(const Results& results, std::size_t chosen);

}  // namespace quoin::tools
