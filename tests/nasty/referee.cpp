// SPDX-License-Identifier: Apache-2.0
#include "tests/nasty/referee.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "geometry/paint.hpp"
#include "solver/grids/solution_on_grids.hpp"
#include "solver/triangles/answer.hpp"
#include "solver/triangles/beside_grids.hpp"
#include "tests/laws/random_section.hpp"

namespace quoin::testing {
namespace {

constexpr SpaceId room{0}, outside{1};
constexpr double factor_band = 0.002, coupling_band = 0.001;
constexpr double span = 20.0;       // K, between room and outside
constexpr double finer = 100;       // how much narrower than asked the referee's bands are
constexpr std::size_t most = 6000;  // points of its triangles
constexpr double rounding = 1e-6;   // of the span

/// Some places in the material.
std::vector<geometry::Point> places_in(const geometry::Sheet& sheet, std::uint64_t seed) {
  const geometry::Triangles triangles = geometry::triangles_of(sheet);
  geometry::Extent all = geometry::extent_of(sheet.front().outline);
  for (const geometry::Patch& patch : sheet) {
    const auto [low, high] = geometry::extent_of(patch.outline);
    all.low = {std::min(all.low.x, low.x), std::min(all.low.y, low.y)};
    all.high = {std::max(all.high.x, high.x), std::max(all.high.y, high.y)};
  }
  Dice dice(7 * seed + 3);
  std::vector<geometry::Point> places;
  for (int tries = 0; tries < 200 && places.size() < 3; ++tries) {
    const geometry::Point place{dice.between(all.low.x, all.high.x),
                                dice.between(all.low.y, all.high.y)};
    const std::uint32_t found = triangles.net.find(place, 0, false).triangle;
    if (found != geometry::Triangle::none && triangles.is_solid(found)) places.push_back(place);
  }
  return places;
}

solver::Answer better_answer(const solver::Question& question, geometry::Point coldest) {
  solver::Claim claim;
  claim.sheet = question.sheet;
  claim.physics = question.physics;
  claim.temperatures = question.temperatures;
  claim.rooms = question.rooms;
  claim.probes = question.probes;
  claim.probes.push_back(coldest);
  claim.coupling_band = coupling_band / (5 * finer);  // an error in energy holds everywhere
  claim.spot_bands = {factor_band * span / finer};
  claim.probe_band = factor_band * span / finer;
  claim.node_limit = claim.patience = most;
  return solver::answer_of(claim);
}

/// The temperature of the referee that is meant by a spot: where pieces touch in a point there are
/// several at one place.
solver::Estimate at_spot(const solver::Answer& better, const solver::Spot& spot) {
  solver::Estimate best = better.probes.back().temperature;
  for (const solver::Spot& one : better.airs.front().cold_spots) {
    const double away = std::hypot(one.place.x - spot.place.x, one.place.y - spot.place.y);
    const double unlike = std::abs(one.temperature.value - spot.temperature.value);
    if (away < geometry::snap && unlike < std::abs(best.value - spot.temperature.value))
      best = one.temperature;
  }
  return best;
}

solver::Question question_of(const Problem& problem) {
  return {problem.section(),
          problem.physics(),
          problem.temperatures(),
          {room},
          outside,
          {},
          factor_band,
          std::nullopt,
          geometry::on_raster(problem.sheet())};
}

}  // namespace

Refereed refereed(const Problem& problem, std::uint64_t seed, double share) {
  solver::Question question = question_of(problem);
  question.probes = places_in(question.sheet, seed);
  question.section = geometry::section_of(question.sheet);
  const solver::Solution surface = solver::solution_of(question, {});
  question.factor_band.reset();
  question.coupling_band = coupling_band;
  const solver::Solution heat = solver::solution_of(question, {});
  const solver::Spot& coldest = surface.airs.front().coldest;
  const solver::Answer better = better_answer(question, coldest.place);

  Refereed result;
  const auto judge = [&](const char* what, const solver::Estimate& one,
                         const solver::Estimate& other) {
    ++result.bands;
    if (std::abs(one.value - other.value) <= share * one.band + other.band + rounding * span)
      return;
    result.misses.push_back(fmt::format("{} {:.4f} +- {:.4f}, but {:.4f} +- {:.4f}", what,
                                        one.value, one.band, other.value, other.band));
  };
  judge("coldest spot", coldest.temperature, at_spot(better, coldest));
  for (std::size_t k = 0; k < surface.probes.size(); ++k)
    judge("probe", surface.probes[k].temperature, better.probes[k].temperature);
  const solver::Estimate& lowest = better.airs.front().coldest.temperature;
  if (lowest.value + lowest.band <
      coldest.temperature.value - coldest.temperature.band - rounding * span) {
    result.misses.push_back(fmt::format("a spot at {:.4f} +- {:.4f} below the coldest, {:.4f}",
                                        lowest.value, lowest.band, coldest.temperature.value));
  }
  for (std::size_t k = 0; k < heat.couplings.size(); ++k) {
    const solver::Coupling &one = heat.couplings[k], &other = better.couplings[k];
    ++result.bands;
    const double slack = rounding * std::abs(other.value) + 1e-9;
    const double cut = (1 - share) * (one.high - one.low) / 2;
    if (std::isfinite(one.high) &&
        (one.low + cut > other.high + slack || one.high - cut < other.low - slack)) {
      result.misses.push_back(fmt::format("coupling {:.6f} to {:.6f}, but {:.6f} to {:.6f}",
                                          one.low, one.high, other.low, other.high));
    }
  }
  return result;
}

Agreement agreement_of(const Problem& problem, double tampered) {
  solver::Question question = question_of(problem);
  Agreement agreement;
  solver::Solution surface = solver::solution_of(question, {});
  solver::prove_thermometers(question, {}, {}, surface);
  for (const solver::Check& check : surface.checks) {
    if (!check.holds)
      agreement.faults.push_back(
          fmt::format("{}: {:.3g} > {:.3g}", check.name, check.value, check.limit));
  }
  for (const solver::AirSurface& air : surface.airs) {
    if (!air.thermometer) continue;
    ++agreement.thermometers;
    const solver::Estimate& coldest = air.coldest.temperature;
    if (air.thermometer->high < coldest.value - coldest.band - rounding * span)
      agreement.faults.push_back(fmt::format("a mean of at most {:.4f} beside a point of {:.4f}",
                                             air.thermometer->high, coldest.value));
  }
  question.factor_band.reset();
  question.coupling_band = coupling_band;
  const solver::Solution grid = solver::solution_on_grids(question, {});
  solver::Claim claim;
  claim.sheet = question.sheet;
  claim.physics = question.physics;
  claim.temperatures = question.temperatures;
  claim.coupling_band = coupling_band;
  claim.node_limit = 1500;
  const solver::Answer answer = solver::answer_of(claim);
  for (std::size_t k = 0; k < grid.couplings.size(); ++k) {
    const solver::Coupling &one = grid.couplings[k], &other = answer.couplings[k];
    if (!std::isfinite(one.high)) continue;
    ++agreement.brackets;
    const double slack = rounding * std::abs(one.high) + 1e-9;
    if (one.low > tampered * other.high + slack || one.high < tampered * other.low - slack)
      agreement.faults.push_back(fmt::format("coupling {:.6f} to {:.6f}, but {:.6f} to {:.6f}",
                                             one.low, one.high, tampered * other.low,
                                             tampered * other.high));
  }
  return agreement;
}

}  // namespace quoin::testing
