// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

#include "tools/draw/canvas/picture.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// The temperatures of one variant as bands between labelled isotherms, with the isotherms of dew
/// point and mould picked out and the coldest spots marked. They are those of
/// the surface-temperature purpose.
[[nodiscard]] Picture drawn_field(const SolvedVariant& solved, std::string_view title);

}  // namespace quoin::tools
