// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Where vapour would condense within the section by steady diffusion, at the stated conditions or
/// over the months of the climate, where the case asks for it. Throws: SolveError.
[[nodiscard]] std::optional<VapourCheck> vapour_check(const SolvedVariant& solved,
                                                      const solver::LinearOptions& options);

}  // namespace quoin::tools
