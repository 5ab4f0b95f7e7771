// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <cmath>

namespace quoin::solver {

/// A place and what a function has there.
struct FunctionValue {
  double at = 0.0;
  double value = 0.0;
};

/// Where a function crosses zero between two places at which it has opposite signs, to within
/// `tolerance`; never asks for more values than halving would, plus one.
/// Source: the interpolate, truncate and project method, ACM Transactions on Mathematical Software
/// 47 (2021) (memory).
template <class Function>
[[nodiscard]] double crossing(Function function, FunctionValue low, FunctionValue high,
                              double tolerance) {
  const double sign = high.value > 0.0 ? 1.0 : -1.0;
  const double truncation = 0.2 / (high.at - low.at);
  const double halvings = std::ceil(std::log2((high.at - low.at) / (2.0 * tolerance)));
  double reach = tolerance * std::exp2(halvings + 1.0);
  while (high.at - low.at > 2.0 * tolerance) {
    const double width = high.at - low.at;
    const double middle = (low.at + high.at) / 2.0;
    const double secant = (high.value * low.at - low.value * high.at) / (high.value - low.value);
    const double towards = middle >= secant ? 1.0 : -1.0;
    const double step = std::min(truncation * width * width, std::abs(middle - secant));
    const double radius = std::max(0.0, reach - width / 2.0);
    const double moved = secant + towards * step;
    const double at = std::abs(moved - middle) <= radius ? moved : middle - towards * radius;
    const double value = function(at);
    if (value == 0.0) return at;
    (sign * value > 0.0 ? high : low) = {at, value};
    reach /= 2.0;
  }
  return (low.at + high.at) / 2.0;
}

}  // namespace quoin::solver
