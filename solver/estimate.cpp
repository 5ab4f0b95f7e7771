// SPDX-License-Identifier: Apache-2.0
#include "solver/estimate.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::solver {

namespace {

/// What remains beyond the finest value, and what rounding alone may do.
struct Remainder {
  double value = 0.0;
  double rounding = 0.0;
  bool asymptotic = true;
};

Remainder remainder_of(double coarse, double medium, double fine) {
  // Steps as small as the rounding of the linear solve say nothing of an order: the grids agree.
  const double rounding = 1e-9 * std::max({1e-3, std::abs(coarse), std::abs(fine)});
  const double first = medium - coarse;
  const double second = fine - medium;
  if (std::abs(first) <= rounding && std::abs(second) <= rounding) return {0.0, rounding, true};
  constexpr double lowest_ratio = 1.19;  // an order of 1/4: slower than any corner of two materials
  const double ratio = second == 0.0 ? 0.0 : first / second;
  if (ratio < lowest_ratio) return {0.0, rounding, false};
  return {second / (std::min(ratio, 4.0) - 1), rounding, true};
}

}  // namespace

Estimate estimate_of(double coarse, double medium, double fine) {
  const Remainder remainder = remainder_of(coarse, medium, fine);
  const double first = std::abs(medium - coarse);
  const double second = std::abs(fine - medium);
  const double band = remainder.asymptotic ? std::max(std::abs(remainder.value), second)
                                           : 2 * std::max(first, second);
  return {fine, band + remainder.rounding, remainder.asymptotic};
}

double limit_of(double coarse, double medium, double fine) {
  return fine + remainder_of(coarse, medium, fine).value;
}

Estimate scaled(const Estimate& estimate, double factor, double offset) {
  return {estimate.value * factor + offset, estimate.band * std::abs(factor), estimate.asymptotic};
}

}  // namespace quoin::solver
