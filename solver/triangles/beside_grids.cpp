// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/beside_grids.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <optional>
#include <stdexcept>
#include <string>
#include <utility>

#include "geometry/paint.hpp"
#include "solver/findings/aims.hpp"
#include "solver/findings/spots.hpp"
#include "solver/findings/wanted.hpp"
#include "solver/triangles/answer.hpp"

namespace quoin::solver {
namespace {

/// Half width of a proof that says enough where nothing hangs on it, in units of the accuracy asked
/// for: at 0.002 in fRsi and 20 K it is 0.2 K, less than what thermometers held to a wall err by.
constexpr double modest = 5;

/// Triangles beside a grid have no more points: a tenth of a second.
constexpr std::size_t most_points = 1'500;

/// Farther apart than this, as a share, is no rounding.
constexpr double rounding = 1e-6;

/// The surfaces of an air on a grid, as far as each is all fabric or all not; closed ones begin
/// where it is warmest.
std::vector<WarmthAlong> courses_on(const Solution& solution, SpaceId air) {
  const geometry::Mesh& mesh = solution.field.mesh;
  std::vector<WarmthAlong> courses;
  for (const geometry::Surface& surface : geometry::surfaces(mesh, solution.physics.air)) {
    if (surface.air != air) continue;
    const std::size_t faces = surface.faces.size();
    std::size_t start = 0;
    for (std::size_t k = 1; surface.closed && k < faces; ++k) {
      if (solution.temperature[surface.node(k)] > solution.temperature[surface.node(start)])
        start = k;
    }
    const std::size_t before = courses.size();
    for (std::size_t k = 0; k < faces; ++k) {
      const geometry::Face& face = surface.faces[(start + k) % faces];
      const bool is_fabric = solution.physics.is_fabric[face.region] != 0;
      if (courses.size() == before || courses.back().is_fabric != is_fabric)
        courses.push_back({is_fabric, {0.0}, {mesh.place(face.from)}, {}});
      WarmthAlong& course = courses.back();
      const double a = solution.temperature[face.from], b = solution.temperature[face.to];
      course.along.push_back(course.along.back() + face.length);
      course.places.push_back(mesh.place(face.to));
      course.warmth.push_back({a, (a + b) / 2, b});
    }
  }
  return courses;
}

/// Triangles make one of points closer than two steps of the grid's snap: they would leave out what
/// is as thin as that.
bool is_too_thin(const geometry::Section& section) {
  const auto has_thin = [](const std::vector<double>& lines) {
    return std::adjacent_find(lines.begin(), lines.end(), [](double a, double b) {
             return b - a < 1.9 * geometry::snap;
           }) != lines.end();
  };
  return has_thin(section.x) || has_thin(section.y);
}

/// What triangles find; none where they cannot tell.
std::optional<Answer> found(const Claim& claim) {
  try {
    return answer_of(claim);
  } catch (const std::runtime_error&) {  // the grid has the answer, this was to prove it
    return std::nullopt;
  }
}

Claim claim_of(const Question& question, const Effort& effort) {
  Claim claim;
  claim.sheet = geometry::on_raster(question.sheet);
  claim.physics = question.physics;
  claim.temperatures = question.temperatures;
  claim.cold_spots = false;
  claim.node_limit = std::min(effort.node_limit / 4, most_points);
  claim.patience = claim.node_limit / 2;
  return claim;
}

/// Says that both methods differ by more than they may; a check that holds says nothing new.
void note_disagreement(Solution& solution, const char* on, double by, double limit) {
  if (by > limit)
    solution.checks.push_back({std::string("grid and triangles agree on ") + on, by, limit, false});
}

bool is_undecided(const Thermometer& thermometer, const std::vector<RoomLimit>& limits) {
  return std::any_of(limits.begin(), limits.end(), [&](const RoomLimit& limit) {
    return limit.air == thermometer.air && thermometer.low < limit.temperature &&
           limit.temperature < thermometer.high;
  });
}

/// Whether triangles ended on a warmer window than the grid found, before they were fine enough to
/// see its own: their bounds are true there and tell nothing of the coldest part.
bool is_of_warmer_part(const Thermometer& one, const std::vector<Thermometer>& by_grid) {
  return std::any_of(by_grid.begin(), by_grid.end(), [&](const Thermometer& guess) {
    const geometry::Point here = one.window.middle, there = guess.next.middle;
    return guess.air == one.air && guess.next.mean < one.low &&
           std::hypot(here.x - there.x, here.y - there.y) > thermometer_width;
  });
}

/// No mean is colder than the coldest point may be; and the grid's mean is off by no more than the
/// point and what it is above that, which is all that a few nodes in a window may get wrong.
void compare(const Question& question, const AirSurface& air, Solution& solution) {
  const Estimate& point = air.coldest.temperature;
  double mean = std::numeric_limits<double>::infinity();
  for (const Spot& spot : air.cold_spots) {
    if (is_alike(solution.physics, spot, air.coldest)) mean = std::min(mean, spot.thermometer);
  }
  note_disagreement(solution, "the thermometer", point.value - point.band - air.thermometer->high,
                    rounding * difference(question, air.air));
  note_disagreement(solution, "the thermometer", air.thermometer->low - mean,
                    point.band + std::max(0.0, mean - point.value));
}

}  // namespace

void prove_thermometers(const Question& question, const Effort& effort,
                        const std::vector<RoomLimit>& limits, Solution& solution) {
  if (solution.triangles || !question.factor_band || question.sheet.empty() ||
      is_too_thin(question.section))
    return;
  Claim claim = claim_of(question, effort);
  for (const AirSurface& air : solution.airs) {
    const std::optional<Window> window = coldest_window(courses_on(solution, air.air));
    if (!window) continue;
    claim.guessed.push_back({air.air, *window, *window});
    claim.rooms.push_back(air.air);
    claim.thermometer_bands.push_back(modest * *question.factor_band *
                                      difference(question, air.air));
  }
  const std::vector<Thermometer> by_grid = claim.guessed;
  std::optional<Answer> answer = found(claim);
  if (!answer) return;
  const auto undecided = [&](const Thermometer& one) { return is_undecided(one, limits); };
  if (std::any_of(answer->thermometers.begin(), answer->thermometers.end(), undecided)) {
    claim.guessed = answer->thermometers;
    for (double& band : claim.thermometer_bands) band /= modest;
    if (std::optional<Answer> narrower = found(claim)) answer = std::move(narrower);
  }
  for (AirSurface& air : solution.airs) {
    for (const Thermometer& one : answer->thermometers) {
      if (one.air != air.air || !std::isfinite(one.low)) continue;
      if (is_of_warmer_part(one, by_grid)) continue;
      air.thermometer = ProvedMean{one.window.middle, one.temperature, one.low, one.high};
      compare(question, air, solution);
    }
  }
}

void prove_couplings(const Question& question, const Effort& effort, Solution& solution) {
  if (solution.triangles || !question.coupling_band || question.sheet.empty() ||
      is_too_thin(question.section) || !(coupling_shortfall(question, solution) > 1.0))
    return;
  Claim claim = claim_of(question, effort);
  claim.coupling_band = question.coupling_band;
  const std::optional<Answer> answer = found(claim);
  if (!answer) return;
  for (Coupling& known : solution.couplings) {
    for (const Coupling& other : answer->couplings) {
      if (known.a != other.a || known.b != other.b || !std::isfinite(known.high)) continue;
      const double low = std::max(known.low, other.low), high = std::min(known.high, other.high);
      if (low <= high) {
        known = {known.a, known.b, (low + high) / 2, low, high};
      } else {
        note_disagreement(solution, "L2D", (low - high) / known.high, rounding);
      }
    }
  }
  solution.accurate = is_reached(question, solution);
}

}  // namespace quoin::solver
