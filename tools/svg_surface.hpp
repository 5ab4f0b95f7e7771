// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/results.hpp"

namespace quoin::tools {

/// The temperature along the developed inside surfaces, a curve for each variant, with the dew
/// point and the mould limit, as an SVG picture: a chart for each surface of each room. Named
/// places are marked where the first variant has them. Empty where there is no inside surface.
[[nodiscard]] std::string surface_picture(const Results& results);

}  // namespace quoin::tools
