// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

#include "tools/draw/canvas/picture.hpp"
#include "tools/draw/section/view.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// The temperatures of one variant as bands between labelled isotherms, with the isotherms of dew
/// point and mould picked out and the coldest spots marked, no larger than `scale`. They are those
/// of the surface-temperature purpose.
[[nodiscard]] Picture drawn_field(const SolvedVariant& solved, std::string_view title,
                                  double scale = any_scale);

/// The scale at which the fields of all variants fit their pictures, units in a metre.
[[nodiscard]] double field_scale(const Results& results);

}  // namespace quoin::tools
