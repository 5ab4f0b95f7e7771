// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// How much leaves the wet part of a section to each air through each coat, and how long its excess
/// water would take to go by diffusion alone, where the case asks for it. The wet part is kept
/// saturated; the air before the surfaces resists, too. Throws: SolveError.
[[nodiscard]] std::optional<DryingLedger> drying_ledger(const SolvedVariant& solved,
                                                        const solver::LinearOptions& options);

}  // namespace quoin::tools
