// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/picture.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// The section as drawn: materials by fill and hatch with a legend, layers and overall dimensions,
/// spaces by name, cut planes, probes and a scale bar, as an SVG picture.
[[nodiscard]] Picture drawn_section(const cases::Variant& variant,
                                    const Per<RegionId, materials::Conductivity>& conductivity,
                                    std::string_view title);
[[nodiscard]] std::string section_picture(
    const cases::Variant& variant, const Per<RegionId, materials::Conductivity>& conductivity,
    std::string_view title, std::string_view note);

}  // namespace quoin::tools
