// SPDX-License-Identifier: Apache-2.0
#include "solver/triangles/answer.hpp"

#include <algorithm>
#include <limits>
#include <numeric>
#include <utility>

namespace quoin::solver {
namespace {

/// Meshes after which what is not reached is out of reach: each has up to four times the triangles
/// of the one before.
constexpr int most_meshes = 14;

/// Where squares of unlike materials meet in a point, finer meshes hardly help. A step that leaves
/// more than this share of the blame is a slow one, and after so many in a row it is in vain.
constexpr double slow_pace = 0.6;
constexpr int most_slow_steps = 2;

/// Fields of the second degree may pass the temperatures of the spaces between their nodes, by less
/// and less on finer triangles. More than this, as a share of the span, is not left as it is.
constexpr double least_beyond = 5e-3;

/// Asks for finer triangles where a temperature is beyond those of the spaces.
void ask_where_beyond(const TriangleLevel& level, Lack& lack) {
  constexpr double some_parts = 4;
  const auto& elements = level.nodes().elements;
  std::vector<double> blame(elements.size(), 0.0);
  for (const TwoFields& fields : level.fields()) {
    for (std::size_t e = 0; e < elements.size(); ++e) {
      for (const std::uint32_t node : elements[e].node) {
        const double warmth = fields.warmth[node];
        if (std::max(-warmth, warmth - 1.0) > least_beyond) blame[e] = some_parts;
      }
    }
  }
  if (std::all_of(blame.begin(), blame.end(), [](double part) { return part == 0.0; })) return;
  lack.reached = false;
  lack.add(blame, 1.0);
}

/// Reads everything that is asked off one level.
void read(const Claim& claim, Answer& answer, const std::vector<Thermometer>& windows,
          const std::vector<Reading>& before, std::vector<Reading>& now, Lack& lack) {
  const TriangleLevel& level = *answer.level;
  ask_where_beyond(level, lack);
  answer.couplings = proved_couplings(level, claim.coupling_band, lack);
  answer.thermometers.clear();
  answer.airs.clear();
  answer.probes.clear();
  for (std::size_t r = 0; r < claim.rooms.size(); ++r) {
    const SpaceId air = claim.rooms[r];
    if (!claim.thermometer_bands.empty()) {
      const auto known = std::find_if(windows.begin(), windows.end(),
                                      [&](const Thermometer& one) { return one.air == air; });
      auto thermometer = proved_thermometer(level, claim.physics, claim.temperatures, air,
                                            known != windows.end() ? &*known : nullptr,
                                            claim.thermometer_bands[r], lack);
      if (thermometer) answer.thermometers.push_back(*thermometer);
    }
    if (claim.spot_bands.empty()) continue;  // looked for once, on the last mesh
    auto surface = cold_spots_on(level, claim.physics, claim.temperatures, air, claim.spot_bands[r],
                                 before, now, lack);
    if (surface) answer.airs.push_back(std::move(*surface));
  }
  if (claim.probes.empty()) return;
  const PlaceFinder finder(answer.triangles, level.nodes());
  const std::vector<double> warmth = level.warmth(claim.temperatures);
  const Flux gap = level.gap(claim.temperatures);
  const std::vector<double> own_gap = level.conduction().product_by_element(gap, gap);
  for (const geometry::Point place : claim.probes) {
    answer.probes.push_back(
        probe_on(level, gap, own_gap, finder, warmth, place, claim.probe_band, before, now, lack));
  }
}

/// Cold spots that no band is wanted of.
void find_spots(const Claim& claim, Answer& answer) {
  std::vector<Reading> now;
  Lack none;
  for (const SpaceId air : claim.rooms) {
    auto surface =
        cold_spots_on(*answer.level, claim.physics, claim.temperatures, air, {}, {}, now, none);
    if (surface) answer.airs.push_back(std::move(*surface));
  }
}

}  // namespace

Answer answer_of(const Claim& claim) {
  std::vector<Thermometer> windows = claim.guessed;
  Answer answer{first_triangles(claim.sheet, windows), nullptr, {}, {}, {}, {}, 0, true};
  std::vector<Reading> readings;
  double blame_before = std::numeric_limits<double>::infinity();
  int slow_steps = 0;
  for (;;) {
    answer.level = std::make_unique<TriangleLevel>(claim.physics, answer.triangles);
    ++answer.meshes;
    Lack lack{std::vector<double>(answer.level->nodes().elements.size(), 0.0)};
    std::vector<Reading> now;
    read(claim, answer, windows, readings, now, lack);
    readings = std::move(now);
    answer.reached = lack.reached;
    const double blame = std::accumulate(lack.blame.begin(), lack.blame.end(), 0.0);
    slow_steps = !lack.moved && blame > slow_pace * blame_before ? slow_steps + 1 : 0;
    blame_before = blame;
    const bool is_long = answer.triangles.net.points().size() > claim.patience;
    if (lack.reached || answer.meshes == most_meshes ||
        slow_steps >= (is_long ? 1 : most_slow_steps))
      break;
    geometry::Triangles finer = answer.triangles;
    windows = answer.thermometers;
    if (!refine_for(finer, *answer.level, lack, windows, claim.node_limit)) break;
    answer.triangles = std::move(finer);
  }
  if (claim.cold_spots && claim.spot_bands.empty()) find_spots(claim, answer);
  return answer;
}

}  // namespace quoin::solver
