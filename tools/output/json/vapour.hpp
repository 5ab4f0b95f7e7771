// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json.hpp>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The check for condensation of a variant that asks for it.
[[nodiscard]] nlohmann::ordered_json vapour_json(const SolvedVariant& solved);

/// The drying ledger of a variant that asks for it.
[[nodiscard]] nlohmann::ordered_json drying_json(const SolvedVariant& solved);

}  // namespace quoin::tools
