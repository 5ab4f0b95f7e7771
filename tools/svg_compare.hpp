// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/results.hpp"

namespace quoin::tools {

/// All variants side by side as an SVG picture: small fields with one scale of temperatures and one
/// scale of lengths, each with its coldest spot and verdict in a few words. Empty for fewer than
/// two variants.
[[nodiscard]] std::string compare_picture(const Results& results);

}  // namespace quoin::tools
