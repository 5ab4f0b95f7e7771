// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/wanted.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace quoin::solver {

double span_of(const SpaceTemperatures& spaces) {
  const auto [low, high] = std::minmax_element(spaces.begin(), spaces.end());
  return *high - *low;
}

double difference(const Question& question, SpaceId air) {
  const double own = std::abs(question.temperatures[air] - question.temperatures[question.outside]);
  return own > 0 ? own : span_of(question.temperatures);
}

Estimate factor_of(const Question& question, const Estimate& temperature, SpaceId air) {
  const double inside = question.temperatures[air];
  const double outside = question.temperatures[question.outside];
  if (inside == outside) return {std::numeric_limits<double>::quiet_NaN(), 0.0, true};
  return scaled(temperature, 1 / (inside - outside), -outside / (inside - outside));
}

bool is_alike(const Physics& physics, const Spot& spot, const Spot& coldest) {
  return physics.is_fabric[coldest.region] == 0 || physics.is_fabric[spot.region] != 0;
}

double reach_below(const Spot& coldest, const Spot& spot) {
  return coldest.temperature.value - (spot.temperature.value - spot.temperature.band);
}

void cover_rivals(const Question& question, AirSurface& air) {
  Estimate& coldest = air.coldest.temperature;
  for (const Spot& spot : air.cold_spots) {
    if (!is_alike(question.physics, spot, air.coldest)) continue;
    coldest.band = std::max(coldest.band, reach_below(air.coldest, spot));
  }
  air.coldest.factor = factor_of(question, coldest, air.air);
}

}  // namespace quoin::solver
