// SPDX-License-Identifier: Apache-2.0
#include "tests/nasty/judgement.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "solver/linear/errors.hpp"

namespace quoin::testing {
namespace {

constexpr SpaceId room{0}, outside{1};
constexpr double factor_band = 0.002, coupling_band = 0.001;
constexpr double span = 20.0;  // K, between room and outside

solver::Solution solved(const Problem& problem, std::optional<double> factor,
                        std::optional<double> coupling, const solver::Effort& effort) {
  return solver::solution_of({problem.section(),
                              problem.physics(),
                              problem.temperatures(),
                              {room},
                              outside,
                              {},
                              factor,
                              coupling,
                              problem.sheet()},
                             effort);
}

std::size_t nodes_of(const solver::Solution& solution) {
  return solution.field.mesh.nx() * solution.field.mesh.ny();
}

void judge_spots(const solver::Solution& solution, std::vector<std::string>& faults) {
  for (const solver::AirSurface& air : solution.airs) {
    const solver::Estimate& factor = air.coldest.factor;
    if (!std::isfinite(factor.value) || !std::isfinite(factor.band)) {
      faults.push_back("the coldest spot is no number");
    } else if (solution.accurate && factor.band > factor_band) {
      faults.push_back(fmt::format("accurate beside a band of {:.3g}", factor.band));
    }
    for (const solver::Spot& spot : air.cold_spots) {
      if (solution.physics.is_fabric[spot.region] == 0) continue;
      const double reach = air.coldest.temperature.value - air.coldest.temperature.band -
                           (spot.temperature.value - spot.temperature.band);
      if (reach > 1e-9 * span) {
        faults.push_back(fmt::format("another spot could be colder by {:.3g} K", reach));
      }
    }
  }
}

void judge_couplings(const solver::Solution& solution, std::vector<std::string>& faults) {
  double largest = 0.0;
  for (const solver::Coupling& coupling : solution.couplings) {
    if (std::isfinite(coupling.high)) largest = std::max(largest, coupling.value);
  }
  for (const solver::Coupling& coupling : solution.couplings) {
    const double band = (coupling.high - coupling.low) / 2;
    if (solution.accurate && std::isfinite(coupling.high) &&
        band > coupling_band * largest * (1 + 1e-12)) {
      faults.push_back(fmt::format("accurate beside a bracket of {:.3g} of {:.3g}", band, largest));
    }
  }
}

}  // namespace

Judgement judgement_of(const Problem& problem) {
  Judgement judgement;
  try {
    const solver::Solution surface = solved(problem, factor_band, std::nullopt, {});
    judge_spots(surface, judgement.faults);
    const solver::Solution heat = solved(problem, std::nullopt, coupling_band, {});
    judge_couplings(heat, judgement.faults);
    judgement.accurate = surface.accurate && heat.accurate;
    judgement.nodes = std::max(nodes_of(surface), nodes_of(heat));
  } catch (const std::exception& error) {
    judgement.faults.emplace_back(error.what());
  }
  return judgement;
}

std::vector<std::string> colder_spots(const Problem& problem) {
  std::vector<std::string> faults;
  try {
    const solver::Solution answer = solved(problem, factor_band, std::nullopt, {});
    solver::Effort more;
    more.cells_per_metre *= 4;
    const solver::Solution finer = solved(problem, factor_band / 4, std::nullopt, more);
    for (std::size_t k = 0; k < answer.airs.size(); ++k) {
      const solver::Spot& one = answer.airs[k].coldest;
      const solver::Spot& other = finer.airs[k].coldest;
      const double least = one.temperature.value - one.temperature.band;
      if (other.temperature.value + other.temperature.band < least - 1e-9 * span) {
        faults.push_back(fmt::format(
            "{:.4f} +- {:.4f} at ({:.4f}, {:.4f}), but {:.4f} +- {:.4f} at ({:.4f}, {:.4f})",
            one.temperature.value, one.temperature.band, one.place.x, one.place.y,
            other.temperature.value, other.temperature.band, other.place.x, other.place.y));
      }
    }
  } catch (const std::exception& error) {
    faults.emplace_back(error.what());
  }
  return faults;
}

}  // namespace quoin::testing
