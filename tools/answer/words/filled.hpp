// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Whether an upright layer of air of the first variant, still or open to outdoors, is filled in
/// another one.
[[nodiscard]] bool fills_cavity(const SolvedVariant& first, const SolvedVariant& later);

}  // namespace quoin::tools
