// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

#include "tools/results.hpp"

namespace quoin::tools {

/// The highest whole percentage of humidity of a room, below what it has, at which the coldest spot
/// of its surface would keep every limit of humidity in all but `marginal_chance`; absent where no
/// air that people live in does. The surface keeps its temperature.
[[nodiscard]] std::optional<double> safe_humidity(const SolvedVariant& solved,
                                                  const solver::AirSurface& surface);

}  // namespace quoin::tools
