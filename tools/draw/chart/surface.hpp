// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/draw/canvas/picture.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// The temperature along the developed inside surfaces, a curve for each variant, with the dew
/// point and the mould limit: a chart for each surface of each room. Named
/// places are marked where the first variant has them. Empty where there is no inside surface.
[[nodiscard]] Picture drawn_surface(const Results& results);

}  // namespace quoin::tools
