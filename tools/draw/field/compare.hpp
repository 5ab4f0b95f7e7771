// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/draw/canvas/picture.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// All variants side by side: small fields with one scale of temperatures and one
/// scale of lengths, each with its coldest spot and verdict in a few words. Empty for fewer than
/// two variants.
[[nodiscard]] Picture drawn_compare(const Results& results);

}  // namespace quoin::tools
