// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

namespace quoin::solver {

/// The numbers from 0 in an order without pattern, always the same: pairs even points with others
/// of the same sequence, which in their own order would go together.
[[nodiscard]] std::vector<std::size_t> shuffled(std::size_t count);

}  // namespace quoin::solver
