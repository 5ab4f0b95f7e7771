// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/find/developed.hpp"
#include "tools/answer/results/results.hpp"
#include "tools/draw/field/limits.hpp"

namespace quoin::tools {

/// A limit with the variants it holds for.
struct SharedLimit {
  Limit limit;
  std::vector<std::size_t> curves;
};

/// The limits of a room in all variants that have a curve of it; equal ones are one.
[[nodiscard]] std::vector<SharedLimit> shared_limits(const Results& results,
                                                     const ComparedSurface& compared);

/// " for 1, 3", or " for all but 2" where that is shorter; nothing where it holds for all.
[[nodiscard]] std::string words_for_curves(const SharedLimit& shared,
                                           const ComparedSurface& compared);

}  // namespace quoin::tools
