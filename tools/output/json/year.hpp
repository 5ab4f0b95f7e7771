// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json.hpp>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The years of a variant, by the name of the room; an empty object where there is no climate.
[[nodiscard]] nlohmann::ordered_json years_json(const SolvedVariant& solved);

/// What would be enough, one entry for each verdict.
[[nodiscard]] nlohmann::ordered_json enough_json(const SolvedVariant& solved);

}  // namespace quoin::tools
