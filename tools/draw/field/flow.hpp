// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

#include "tools/draw/canvas/picture.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// How much heat flows between two flow lines in the pictures of a case, W/m: the same in every
/// variant, so that more lines mean more heat. 0 where no heat flows.
[[nodiscard]] double flow_step(const Results& results);

/// Heat-flow lines of one variant across its isotherms, with `step` W/m between two lines. They are
/// those of the heat-flow purpose. Empty where there are none.
[[nodiscard]] Picture drawn_flow(const SolvedVariant& solved, double step, std::string_view title);

}  // namespace quoin::tools
