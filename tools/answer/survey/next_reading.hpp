// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/answer/survey/explain.hpp"

namespace quoin::tools {

/// What would be learned from one more measurement, the most telling first, from the spread of the
/// unknowns about the mode of the best explanation. Empty where nothing would narrow by a tenth.
[[nodiscard]] std::vector<NextStep> next_steps(const WorkedSurvey& worked);

}  // namespace quoin::tools
