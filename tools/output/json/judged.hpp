// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json.hpp>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The outcome of each space that is judged.
[[nodiscard]] nlohmann::ordered_json outcomes_json(const SolvedVariant& solved);

/// What each criterion says of each space it judges.
[[nodiscard]] nlohmann::ordered_json verdicts_json(const SolvedVariant& solved);

}  // namespace quoin::tools
