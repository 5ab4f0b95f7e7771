// SPDX-License-Identifier: Apache-2.0
#include "solver/estimate.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::solver {

Estimate estimate_of(double coarse, double medium, double fine) {
  // Steps as small as the rounding of the linear solve say nothing of an order: the grids agree.
  const double rounding = 1e-9 * std::max({1e-3, std::abs(coarse), std::abs(fine)});
  const double first = medium - coarse;
  const double second = fine - medium;
  if (std::abs(first) <= rounding && std::abs(second) <= rounding) return {fine, rounding, true};

  constexpr double lowest_ratio = 1.19;  // an order of 1/4: slower than any corner of two materials
  const double ratio = second == 0.0 ? 0.0 : first / second;
  if (ratio < lowest_ratio) {
    return {fine, 2 * std::max(std::abs(first), std::abs(second)) + rounding, false};
  }
  const double remaining = second / (std::min(ratio, 4.0) - 1);
  return {fine + remaining, std::abs(remaining) + rounding, true};
}

Estimate scaled(const Estimate& estimate, double factor, double offset) {
  return {estimate.value * factor + offset, estimate.band * std::abs(factor), estimate.asymptotic};
}

}  // namespace quoin::solver
