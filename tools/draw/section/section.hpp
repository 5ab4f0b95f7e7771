// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

#include "tools/draw/canvas/picture.hpp"
#include "tools/draw/section/view.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// The section as drawn: materials by fill and hatch with a legend, layers and overall dimensions,
/// spaces by name, cut planes, probes and a scale bar. No larger than `scale`.
[[nodiscard]] Picture drawn_section(const cases::Variant& variant,
                                    const Per<RegionId, materials::Conductivity>& conductivity,
                                    std::string_view title, double scale = any_scale);

/// The scale at which the sections of all variants fit their pictures, units in a metre.
[[nodiscard]] double section_scale(const Results& results);

}  // namespace quoin::tools
