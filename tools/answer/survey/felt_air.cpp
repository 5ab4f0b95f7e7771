// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/survey/felt_air.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace quoin::tools {
namespace {

struct At {
  double at = 0.0;
  double value = 0.0;
};

/// Straight lines between places in order; beyond them as at the ends.
template <std::size_t n>
double between(const std::array<At, n>& line, double at) {
  if (at <= line.front().at) return line.front().value;
  for (std::size_t k = 1; k < n; ++k) {
    if (at > line[k].at) continue;
    const double share = (at - line[k - 1].at) / (line[k].at - line[k - 1].at);
    return line[k - 1].value + share * (line[k].value - line[k - 1].value);
  }
  return line.back().value;
}

constexpr double one_brick = 10.8, one_and_a_half = 18.8;  // lags, h
/// Through the day, of a wall of one brick, of thicker ones. The first is the last of the day
/// before.
constexpr std::array<At, 6> thin{
    {{-3.0, 1.5}, {7.0, 1.4}, {10.0, 2.0}, {15.0, 3.1}, {21.0, 1.5}, {31.0, 1.4}}};
constexpr std::array<At, 6> thick{
    {{-3.0, 2.3}, {7.0, 2.4}, {10.0, 2.6}, {15.0, 3.2}, {21.0, 2.3}, {31.0, 2.4}}};
constexpr std::array<At, 5> by_day{
    {{0.0, 0.9}, {one_brick, 0.7}, {one_and_a_half, 0.5}, {30.0, 0.9}, {59.0, 1.6}}};
constexpr double worst_hour = 15.0;

}  // namespace

double felt_from_history(double hours, double lag) { return 2.4 * std::exp(-1.35 * hours / lag); }

double felt_from_day(double lag) { return between(by_day, lag); }

double felt_from_spot(std::optional<double> hour, double lag) {
  const double at = hour.value_or(worst_hour);
  const double share = std::clamp((lag - one_brick) / (one_and_a_half - one_brick), 0.0, 1.0);
  const double known = between(thin, at) + share * (between(thick, at) - between(thin, at));
  return known * std::min(1.0, lag / one_brick);
}

}  // namespace quoin::tools
