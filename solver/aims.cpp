// SPDX-License-Identifier: Apache-2.0
#include "solver/aims.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::solver {
namespace {

double largest_coupling(const std::vector<Coupling>& couplings) {
  double largest = 0.0;
  for (const Coupling& coupling : couplings) {
    if (std::isfinite(coupling.high)) largest = std::max(largest, coupling.value);
  }
  return largest;
}

}  // namespace

double span_of(const SpaceTemperatures& spaces) {
  const auto [low, high] = std::minmax_element(spaces.begin(), spaces.end());
  return *high - *low;
}

double difference(const Question& question, SpaceId air) {
  const double own = std::abs(question.temperatures[air] - question.temperatures[question.outside]);
  return own > 0 ? own : span_of(question.temperatures);
}

double widening(const Question& question, const Spot& spot) {
  const double inside = question.temperatures[question.physics.air[spot.space]];
  return question.section.thinness * std::abs(inside - spot.temperature.value);
}

double widening_of_probes(const Question& question) {
  return question.section.thinness * span_of(question.temperatures) / 4;
}

double aim(const Question& question, SpaceId air, const Spot& spot) {
  return std::max(*question.factor_band * difference(question, air), widening(question, spot));
}

double aim_of_probes(const Question& question) {
  return std::max(*question.factor_band * span_of(question.temperatures),
                  widening_of_probes(question));
}

double aim_of_couplings(const Question& question, const std::vector<Coupling>& couplings) {
  return std::max(*question.coupling_band, question.section.thinness / 10) *
         largest_coupling(couplings);
}

double shortfall_of(const std::vector<Coupling>& couplings, double wanted) {
  double worst = 0.0;
  for (const Coupling& coupling : couplings) {
    if (!std::isfinite(coupling.high) || coupling.high == coupling.low) continue;
    worst = std::max(worst, (coupling.high - coupling.low) / 2 / wanted);
  }
  return worst;
}

bool is_reached(const Question& question, const Solution& solution) {
  if (question.coupling_band &&
      shortfall_of(solution.couplings,
                   *question.coupling_band * largest_coupling(solution.couplings)) > 1.0)
    return false;
  if (!question.factor_band) return true;
  const double span = span_of(question.temperatures);
  const bool spots =
      std::all_of(solution.airs.begin(), solution.airs.end(), [&](const AirSurface& air) {
        return air.coldest.temperature.band <=
               *question.factor_band * difference(question, air.air);
      });
  return spots &&
         std::all_of(solution.probes.begin(), solution.probes.end(), [&](const ProbeValue& probe) {
           return probe.temperature.band <= *question.factor_band * span;
         });
}

}  // namespace quoin::solver
