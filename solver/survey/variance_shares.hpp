// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <functional>
#include <span>
#include <vector>

namespace quoin::solver {

/// What each input carries of the variance of a function.
struct VarianceShares {
  std::vector<double> alone;  ///< of each input by itself
  std::vector<double> total;  ///< with all it does together with others
};

/// The shares of inputs that are even between 0 and 1 and independent, by picking one and freezing
/// the others. Calls the function (dimensions + 2) * points times.
/// Source: the estimators of Saltelli and Jansen (memory).
[[nodiscard]] VarianceShares variance_shares(
    std::size_t dimensions, std::size_t points,
    const std::function<double(std::span<const double>)>& function);

}  // namespace quoin::solver
