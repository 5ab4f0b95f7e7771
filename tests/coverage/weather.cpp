// SPDX-License-Identifier: Apache-2.0
#include "tests/coverage/weather.hpp"

#include <cmath>
#include <numbers>

namespace quoin::testing {

std::vector<double> winter_weather(double mean, double hour, std::size_t hours,
                                   std::mt19937& random) {
  constexpr double drift_sd = 2.5, drift_hours = 48.0, warmest = 15.0;
  std::normal_distribution<double> normal;
  const double swing = std::uniform_real_distribution<double>(0.5, 4.0)(random);
  const double kept = std::exp(-1.0 / drift_hours);
  double drift = drift_sd * normal(random);
  std::vector<double> weather;
  for (std::size_t k = 0; k <= hours; ++k) {
    const double at = hour - static_cast<double>(hours - k);
    const double daily = swing * std::cos(2.0 * std::numbers::pi * (at - warmest) / 24.0);
    weather.push_back(mean + daily + drift);
    drift = kept * drift + drift_sd * std::sqrt(1.0 - kept * kept) * normal(random);
  }
  return weather;
}

}  // namespace quoin::testing
