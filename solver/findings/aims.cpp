// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/aims.hpp"

#include <algorithm>
#include <cmath>

#include "solver/findings/wanted.hpp"

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

double aim(const Question& question, SpaceId air) {
  return *question.factor_band * difference(question, air);
}

double aim_of_probes(const Question& question) {
  return *question.factor_band * span_of(question.temperatures);
}

double aim_of_couplings(const Question& question, const std::vector<Coupling>& couplings) {
  return *question.coupling_band * largest_coupling(couplings);
}

double shortfall_of(const std::vector<Coupling>& couplings, double wanted) {
  double worst = 0.0;
  for (const Coupling& coupling : couplings) {
    if (!std::isfinite(coupling.high) || coupling.high == coupling.low) continue;
    worst = std::max(worst, (coupling.high - coupling.low) / 2 / wanted);
  }
  return worst;
}

double coupling_shortfall(const Question& question, const Solution& solution) {
  return shortfall_of(solution.couplings, aim_of_couplings(question, solution.couplings));
}

bool is_reached(const Question& question, const Solution& solution) {
  if (question.coupling_band && coupling_shortfall(question, solution) > 1.0) return false;
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
