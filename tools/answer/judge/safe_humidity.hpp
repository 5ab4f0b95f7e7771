// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// The highest whole percentage of humidity that a room may never pass for the coldest spot of its
/// surface to keep every limit of humidity in all but `marginal_chance`; absent where no air that
/// people live in does, or where the room hardly ever passes it. What is stated of a room is the
/// middle of what is taken for it, so that it may have to be more. The surface keeps its
/// temperature.
[[nodiscard]] std::optional<double> safe_humidity(const SolvedVariant& solved,
                                                  const solver::AirSurface& surface);

}  // namespace quoin::tools
