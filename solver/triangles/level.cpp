// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/level.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

#include "solver/linear/errors.hpp"

namespace quoin::solver {
namespace {

using geometry::Border;

/// Flows below this are none, W/(m K): an air that exchanges nothing leaves rounding only.
constexpr double no_flow = 1e-6;

/// The difference between the two fluxes of one state.
Flux difference(const TwoFields& fields) {
  Flux d = fields.above;
  for (std::size_t n = 0; n < d.size(); ++n) d[n] -= fields.below[n];
  return d;
}

/// The state with all surroundings at 1 less another one. What flows while all are alike is
/// nothing.
TwoFields rest_of(const TwoFields& fields) {
  TwoFields rest = fields;
  for (double& each : rest.warmth) each = 1.0 - each;
  for (auto& element : rest.stream) {
    for (double& each : element) each = -each;
  }
  for (Flux* flux : {&rest.above, &rest.below}) {
    for (double& each : *flux) each = -each;
  }
  return rest;
}

void add(std::vector<double>& sum, const std::vector<double>& part, double factor) {
  for (std::size_t n = 0; n < sum.size(); ++n) sum[n] += factor * part[n];
}

}  // namespace

TriangleLevel::TriangleLevel(const Physics& physics, const geometry::Triangles& triangles)
    : nodes_(geometry::noded(triangles)), conduction_(nodes_, physics) {
  find_airs(physics);
  for (const SpaceId air : airs_) {
    if (airs_.size() == 2 && fields_.size() == 1) {
      fields_.push_back(rest_of(fields_.front()));
      gaps_.push_back(difference(fields_.back()));
      break;
    }
    Surroundings surroundings(nodes_.borders.size(), 0.0);
    for (std::size_t b = 0; b < surroundings.size(); ++b) {
      const Border& border = nodes_.borders[b];
      if (border.space && physics.air[*border.space] == air) surroundings[b] = 1.0;
    }
    fields_.push_back(conduction_.solve(surroundings));
    gaps_.push_back(difference(fields_.back()));
  }
  check_identity();
}

void TriangleLevel::find_airs(const Physics& physics) {
  for (const Border& border : nodes_.borders) {
    if (border.space) airs_.push_back(physics.air[*border.space]);
  }
  std::sort(airs_.begin(), airs_.end());
  airs_.erase(std::unique(airs_.begin(), airs_.end()), airs_.end());
}

bool TriangleLevel::touches_another(SpaceId air) const {
  const auto& touching = conduction_.touching();
  return std::any_of(touching.begin(), touching.end(),
                     [&](const auto& pair) { return pair.first == air || pair.second == air; });
}

void TriangleLevel::check_identity() {
  // The energy of the difference of both fluxes is the difference of their energies.
  for (std::size_t a = 0; a < airs_.size(); ++a) {
    if (touches_another(airs_[a])) continue;
    const double above = conduction_.product(fields_[a].above, fields_[a].above);
    const double below = conduction_.product(fields_[a].below, fields_[a].below);
    const double gap = conduction_.product(gaps_[a], gaps_[a]);
    identity_ = std::max(identity_, std::abs(gap - (above - below)) / std::max(above, no_flow));
  }
  // Rounding alone: random sections with contrasts of 1e4 stay below 1e-7.
  if (!(identity_ < 1e-6)) {
    throw SolveError(
        fmt::format("the two fields on triangles contradict each other: their gap is off by {:.2e}",
                    identity_));
  }
}

std::vector<double> TriangleLevel::warmth(const SpaceTemperatures& temperatures) const {
  std::vector<double> sum(nodes_.nodes(), 0.0);
  for (std::size_t a = 0; a < airs_.size(); ++a) {
    add(sum, fields_[a].warmth, temperatures[airs_[a]]);
  }
  return sum;
}

Flux TriangleLevel::gap(const SpaceTemperatures& temperatures) const {
  Flux sum(gaps_.front().size(), 0.0);
  for (std::size_t a = 0; a < airs_.size(); ++a) add(sum, gaps_[a], temperatures[airs_[a]]);
  return sum;
}

Flux TriangleLevel::influence_gap(const std::vector<std::uint32_t>& borders) const {
  double length = 0.0;
  for (const std::uint32_t b : borders) length += nodes_.borders[b].length;
  // A flux of 1 / length into the surface is an air of that much times its resistance.
  Surroundings source(nodes_.borders.size(), 0.0);
  for (const std::uint32_t b : borders) source[b] = conduction_.resistance(b) / length;
  return difference(conduction_.solve(source));
}

void Lack::add(const std::vector<double>& parts, double factor) {
  solver::add(blame, parts, factor);
}

}  // namespace quoin::solver
