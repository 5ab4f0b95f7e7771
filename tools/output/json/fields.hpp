// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json.hpp>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// What was found with the resistances for surface temperatures: coldest spots, probes, flows.
[[nodiscard]] nlohmann::ordered_json surface_json(const SolvedVariant& solved);

/// What was found with the resistances for heat flow: couplings, coldest spots, probes, flows.
[[nodiscard]] nlohmann::ordered_json heat_json(const SolvedVariant& solved);

}  // namespace quoin::tools
