// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <random>
#include <vector>

namespace quoin::testing {

/// Invented winter weather up to some hour of the day, hour by hour, the present hour last: a daily
/// swing of 0.5 to 4 K, warmest at 15 h, and a drift of 2.5 K that forgets itself in two days.
/// Shape: hours + 1. degC
[[nodiscard]] std::vector<double> winter_weather(double mean, double hour, std::size_t hours,
                                                 std::mt19937& random);

}  // namespace quoin::testing
