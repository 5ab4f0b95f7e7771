// SPDX-License-Identifier: Apache-2.0
#include "solver/findings/other_temperatures.hpp"

#include <Eigen/LU>
#include <algorithm>
#include <cmath>
#include <utility>

#include "solver/linear/errors.hpp"
#include "solver/scheme/basis.hpp"

namespace quoin::solver {
namespace {

double sum_of(const Field& field, const std::vector<double>& weights,
              const SpaceTemperatures& spaces) {
  double sum = 0.0;
  for (std::size_t a = 0; a < weights.size(); ++a) sum += weights[a] * spaces[field.airs[a]];
  return sum;
}

/// The difference of the spaces that were coldest and warmest before, now by then.
double growth(const SpaceTemperatures& before, const SpaceTemperatures& now) {
  const auto [low, high] = std::minmax_element(before.begin(), before.end());
  const auto at = [&](auto place) { return *(now.begin() + (place - before.begin())); };
  return *high == *low ? 1.0 : (at(high) - at(low)) / (*high - *low);
}

/// The airs that have losses, each once.
std::vector<SpaceId> unknown_airs(const std::vector<OtherLoss>& losses) {
  std::vector<SpaceId> unknown;
  for (const OtherLoss& loss : losses) {
    if (std::find(unknown.begin(), unknown.end(), loss.from) == unknown.end())
      unknown.push_back(loss.from);
  }
  return unknown;
}

}  // namespace

std::vector<double> weights_at(const Field& field, geometry::Point place) {
  std::vector<double> weights;
  weights.reserve(field.airs.size());
  for (const std::vector<double>& basis : field.basis)
    weights.push_back(temperature_at(field, basis, place));
  return weights;
}

Estimate at_other_temperatures(const Field& field, const std::vector<double>& weights,
                               const Estimate& found, const SpaceTemperatures& before,
                               const SpaceTemperatures& now) {
  const double scale = growth(before, now);
  const double correction = found.value - sum_of(field, weights, before);
  return {sum_of(field, weights, now) + scale * correction, std::abs(scale) * found.band,
          found.asymptotic};
}

void change_temperatures(Solution& solution, const SpaceTemperatures& before,
                         const SpaceTemperatures& now) {
  const Field& field = solution.field;
  const auto change = [&](Estimate& temperature, geometry::Point place) {
    temperature = at_other_temperatures(field, weights_at(field, place), temperature, before, now);
  };
  for (AirSurface& air : solution.airs) {
    change(air.coldest.temperature, air.coldest.place);
    for (Spot& spot : air.cold_spots) change(spot.temperature, spot.place);
  }
  for (ProbeValue& probe : solution.probes) change(probe.temperature, probe.place);
  for (AirSurface& air : solution.airs) {
    // A proof holds for the temperatures it was made for: between two airs all scale alike.
    if (field.airs.size() > 2) air.thermometer.reset();
    if (!air.thermometer) continue;
    const SpaceId one = field.airs.front(), other = field.airs.back();
    const double span = before[one] - before[other];
    if (one == other || span == 0.0) continue;
    for (double* each :
         {&air.thermometer->temperature, &air.thermometer->low, &air.thermometer->high}) {
      *each = now[other] + (*each - before[other]) / span * (now[one] - now[other]);
    }
    if (air.thermometer->low > air.thermometer->high) {
      std::swap(air.thermometer->low, air.thermometer->high);
    }
  }
  if (solution.triangles) {
    solution.triangles->temperature = superposed(solution.triangles->basis, field.airs, now);
  }
  solution.temperature = temperatures(field, now);
  solution.flows = flows(field, now);
}

SpaceTemperatures balanced(const SpaceTemperatures& temperatures, const Per<SpaceId, SpaceId>& air,
                           const std::vector<OtherLoss>& losses,
                           const std::vector<Coupling>& couplings) {
  const std::vector<SpaceId> unknown = unknown_airs(losses);
  if (unknown.empty()) return temperatures;
  const auto size = static_cast<Eigen::Index>(unknown.size());
  Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(size, size);
  Eigen::VectorXd right = Eigen::VectorXd::Zero(size);
  const auto row_of = [&](SpaceId id) -> Eigen::Index {
    return std::find(unknown.begin(), unknown.end(), id) - unknown.begin();
  };
  const auto link = [&](SpaceId one, SpaceId other, double conductance) {
    const Eigen::Index row = row_of(one);
    if (row == size) return;
    matrix(row, row) += conductance;
    if (const Eigen::Index column = row_of(other); column != size) {
      matrix(row, column) -= conductance;
    } else {
      right(row) += conductance * temperatures[other];
    }
  };
  for (const OtherLoss& loss : losses) link(loss.from, loss.to, loss.by_metre);
  for (const Coupling& coupling : couplings) {
    link(coupling.a, coupling.b, coupling.value);
    link(coupling.b, coupling.a, coupling.value);
  }
  const Eigen::FullPivLU<Eigen::MatrixXd> solver(matrix);
  if (!solver.isInvertible())
    throw SolveError("an unheated space loses heat to no other: its temperature is unknown");
  const Eigen::VectorXd solved = solver.solve(right);
  SpaceTemperatures result = temperatures;
  for (const SpaceId id : geometry::ids(result)) {
    if (const Eigen::Index row = row_of(air[id]); row != size) result[id] = solved(row);
  }
  return result;
}

}  // namespace quoin::solver
