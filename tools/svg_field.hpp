// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/picture.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// The temperatures of one variant as bands between labelled isotherms, with the isotherms of dew
/// point and mould picked out and the coldest spots marked, as an SVG picture. They are those of
/// the surface-temperature purpose.
[[nodiscard]] Picture drawn_field(const SolvedVariant& solved, std::string_view title);
[[nodiscard]] std::string field_picture(const SolvedVariant& solved, std::string_view title,
                                        std::string_view note);

}  // namespace quoin::tools
