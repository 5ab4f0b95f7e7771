// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

#include "tools/draw/canvas/picture.hpp"
#include "tools/draw/section/view.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// How much heat flows between two flow lines in the pictures of a case, W/m: the same in every
/// variant, so that more lines mean more heat. 0 where no heat flows.
[[nodiscard]] double flow_step(const Results& results);

/// Heat-flow lines of one variant across its isotherms, with `step` W/m between two lines. They are
/// those of the heat-flow purpose. Empty where there are none.
[[nodiscard]] Picture drawn_flow(const SolvedVariant& solved, double step, std::string_view title,
                                 double scale = any_scale);

/// The scale at which the flow lines of all variants fit their pictures, units in a metre.
[[nodiscard]] double flow_scale(const Results& results);

}  // namespace quoin::tools
