// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <vector>

#include "solver/survey/table.hpp"

namespace quoin::solver {

/// The sd of a weighted sum of unknowns. Shape: covariance n by n; target n.
[[nodiscard]] double spread_along(const Table& covariance, std::span<const double> target);

/// The covariance after readings taken together whose slopes and own variances are known.
/// Shape: slopes readings by n; variance readings.
[[nodiscard]] Table narrowed(const Table& covariance, const Table& slopes,
                             std::span<const double> variance);

/// The covariance after reading the same once more on a day of its own: the unknowns `lasting`
/// stay, all others are as uncertain as beforehand, where they are standard normal. Of the others
/// the result tells nothing.
[[nodiscard]] Table read_again(const Table& covariance, std::span<const std::size_t> lasting);

}  // namespace quoin::solver
