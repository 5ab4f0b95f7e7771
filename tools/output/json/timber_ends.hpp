// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json.hpp>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The ends of timber in the masonry of a variant.
[[nodiscard]] nlohmann::ordered_json timber_ends_json(const SolvedVariant& solved);

}  // namespace quoin::tools
