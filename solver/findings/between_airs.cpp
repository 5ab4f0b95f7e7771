// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/between_airs.hpp"

#include <algorithm>

namespace quoin::solver {
namespace {

/// The coldest space, degC, and what the warmest is above it, K; 1 where all are equally warm.
struct Scale {
  double coldest = 0.0;
  double span = 1.0;

  explicit Scale(const SpaceTemperatures& temperatures) {
    if (temperatures.begin() == temperatures.end()) return;
    const auto [low, high] = std::minmax_element(temperatures.begin(), temperatures.end());
    coldest = *low;
    if (*high > *low) span = *high - *low;
  }

  [[nodiscard]] double temperature(double between) const { return coldest + span * between; }
  [[nodiscard]] Estimate temperature(const Estimate& between) const {
    return scaled(between, span, coldest);
  }
};

void change(Spot& spot, const Scale& scale) {
  spot.temperature = scale.temperature(spot.temperature);
  spot.thermometer = scale.temperature(spot.thermometer);
  spot.dip *= scale.span;
}

void change(AirSurface& air, const Scale& scale) {
  change(air.coldest, scale);
  for (Spot& spot : air.cold_spots) change(spot, scale);
  if (!air.thermometer) return;
  for (double* each :
       {&air.thermometer->temperature, &air.thermometer->low, &air.thermometer->high})
    *each = scale.temperature(*each);
}

}  // namespace

Question between_airs(const Question& question) {
  const Scale scale(question.temperatures);
  Question between = question;
  for (double& each : between.temperatures) each = (each - scale.coldest) / scale.span;
  return between;
}

Solution at_temperatures(Solution between, const SpaceTemperatures& temperatures) {
  const Scale scale(temperatures);
  Solution& solution = between;
  for (AirSurface& air : solution.airs) change(air, scale);
  for (ProbeValue& probe : solution.probes)
    probe.temperature = scale.temperature(probe.temperature);
  for (std::size_t n = 0; n < solution.temperature.size(); ++n) {
    if (solution.field.solid[n] != 0)  // elsewhere 0
      solution.temperature[n] = scale.temperature(solution.temperature[n]);
  }
  if (solution.triangles) {
    for (double& each : solution.triangles->temperature) each = scale.temperature(each);
  }
  solution.flows = flows(solution.field, temperatures);
  return between;
}

}  // namespace quoin::solver
