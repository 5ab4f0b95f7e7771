// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Whether it is a remedy what sets a variant apart from the first: only what people can do,
/// layers, heating, airing, drying, and nothing worse for it. Other weather is none, nor is wetter
/// masonry, a colder or more humid room, or a milder criterion, whatever else the variant gains;
/// standing air under a floor costs its timber; and a wall without its masonry was hardly meant.
[[nodiscard]] bool is_remedy(const SolvedVariant& first, const SolvedVariant& later);

}  // namespace quoin::tools
