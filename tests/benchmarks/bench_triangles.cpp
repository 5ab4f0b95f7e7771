// SPDX-License-Identifier: Apache-2.0
// Sections in triangles, straight and turned by 0.4 rad: unknowns and time until L2D is proved to
// 1e-3, 1e-4, 1e-5 and the mean over 10 mm to 2e-3 and 2e-4 in fRsi, all meshes included.
#include <benchmark/benchmark.h>

#include <cmath>
#include <numbers>

#include "geometry/recipe.hpp"
#include "solver/triangles/answer.hpp"
#include "tests/geometry/triangles/shapes.hpp"
#include "tests/support/problem.hpp"

namespace {

using namespace quoin;
using geometry::Outline;
using geometry::Point;
using geometry::RegionId;
using geometry::SpaceId;
using testing::Problem;

const SpaceId room{0}, outside{1};

Problem brick_corner() { return testing::external_corner(0.3, 0.77, 0.25); }

/// A plastered brick wall whose faces rise 1 in 2.
Problem plastered_slope() {
  Problem problem;
  problem.space(1, 0.25);
  problem.space(0, 0.04);
  const RegionId brick = problem.material(0.77), plaster = problem.material(0.35);
  const auto between = [](double west, double east) {
    return Outline{{west, 0}, {east, 0}, {east + 0.5, 1}, {west + 0.5, 1}};
  };
  problem.paint(room, between(-0.3, 0));
  problem.paint(outside, between(0.3354, 0.7));
  problem.paint(brick, between(0, 0.3354));
  problem.paint(plaster, between(0, 0.02236));
  return problem;
}

/// A corner of an angle in degrees.
Problem corner_of(double degrees) {
  Problem problem;
  problem.space(1, 0.25);
  problem.space(0, 0.04);
  const RegionId brick = problem.material(0.77);
  const double angle = degrees * std::numbers::pi / 180, t = 0.3, wide = t / std::tan(angle / 2);
  const auto leg = [&](double along, double off) {  // of the second wall
    return Point{along * std::cos(angle) - off * std::sin(angle),
                 along * std::sin(angle) + off * std::cos(angle)};
  };
  const Point end = leg(1, 0), outer = leg(1, t);
  problem.paint(room, Outline{{0, 0}, {1, 0}, {1 + end.x, end.y}, end});
  problem.paint(
      outside,
      Outline{{1, -t}, {1, -2 * t}, {-2 * wide, -2 * t}, leg(1, 2 * t), outer, {-wide, -t}});
  problem.paint(brick, Outline{{0, 0}, end, outer, {-wide, -t}, {1, -t}, {1, 0}});
  return problem;
}
Problem corner_60() { return corner_of(60); }
Problem corner_100() { return corner_of(100); }
Problem corner_135() { return corner_of(135); }

/// A window jamb with an aluminium cill plate of 3 mm run through it.
Problem jamb_with_aluminium() {
  Problem problem;
  problem.space(1, 0.25);
  problem.space(0, 0.04);
  const RegionId brick = problem.material(0.77), plaster = problem.material(0.8);
  const RegionId frame = problem.material(0.13, false), metal = problem.material(160);
  problem.paint(brick, -1, 0, -0.33, 0);
  problem.paint(plaster, -1, 0, 0, 0.015);
  problem.paint(plaster, 0, 0.015, -0.16, 0.015);
  problem.paint(frame, 0, 0.1, -0.23, -0.16);
  problem.paint(metal, -0.05, 0.1, -0.2, -0.197);
  problem.paint(room, -1, 0.1, 0.015, 0.1);
  problem.paint(room, 0.015, 0.1, -0.16, 0.015);
  problem.paint(outside, -1, 0.1, -0.43, -0.33);
  problem.paint(outside, 0, 0.1, -0.33, -0.23);
  return problem;
}

/// The reveal of a brick wall, splayed and lined with 20 mm of insulation.
Problem splayed_reveal() {
  Problem problem;
  geometry::Reveal reveal;
  reveal.inside = problem.space(1, 0.25);
  reveal.outside = problem.space(0, 0.04);
  reveal.layers = {{problem.material(0.8), 0.015}, {problem.material(0.77), 0.33}};
  reveal.lining = {{problem.material(0.8), 0.015}, {problem.material(0.04), 0.02}};
  reveal.frame = problem.material(0.13, false);
  reveal.frame_setback = 0.1;
  reveal.splay = 0.1;
  for (const geometry::Patch& patch : geometry::drawing_of(reveal).sheet) {
    problem.paint(patch.fill, patch.outline);
  }
  return problem;
}

/// An inner corner rounded by an arc of chords half a millimetre long.
Problem arc() {
  Problem problem = testing::external_corner(0.3, 0.77, 0.25);
  Outline round = {{0.3, 0.3}};
  constexpr int chords = 314;
  for (int k = 0; k <= chords; ++k) {
    const double angle = std::numbers::pi * (1.0 + 0.5 * k / chords);
    round.push_back({0.4 + 0.1 * std::cos(angle), 0.4 + 0.1 * std::sin(angle)});
  }
  problem.paint(RegionId(0), round);
  return problem;
}

struct Wanted {
  double coupling = 0.0;  ///< relative; 0: not asked for
  double mean = 0.0;      ///< in fRsi; 0: not asked for
};

void prove(benchmark::State& state, Problem (*section)(), double angle, Wanted wanted) {
  const Problem problem = section();
  solver::Claim claim;
  claim.sheet = geometry::turned(problem.sheet(), angle);
  claim.physics = problem.physics();
  claim.temperatures = problem.temperatures();
  if (wanted.coupling > 0) claim.coupling_band = wanted.coupling;
  if (wanted.mean > 0) {
    claim.rooms = {room};
    claim.thermometer_bands = {wanted.mean};
  }
  std::optional<solver::Answer> answer;
  for (auto _ : state) answer = solver::answer_of(claim);
  state.counters["unknowns"] = static_cast<double>(answer->level->conduction().unknowns());
  state.counters["meshes"] = answer->meshes;
  state.counters["reached"] = answer->reached ? 1 : 0;
}

[[maybe_unused]] const int registered = [] {
  const std::pair<const char*, Problem (*)()> sections[] = {
      {"brick corner", brick_corner},     {"plastered slope", plastered_slope},
      {"corner of 60 deg", corner_60},    {"corner of 100 deg", corner_100},
      {"corner of 135 deg", corner_135},  {"jamb with aluminium", jamb_with_aluminium},
      {"splayed reveal", splayed_reveal}, {"arc", arc}};
  const std::pair<const char*, Wanted> levels[] = {{"L2D 1e-3", {1e-3, 0}},
                                                   {"L2D 1e-4", {1e-4, 0}},
                                                   {"L2D 1e-5", {1e-5, 0}},
                                                   {"mean 2e-3", {0, 2e-3}},
                                                   {"mean 2e-4", {0, 2e-4}}};
  for (const auto& [name, section] : sections) {
    for (const double angle : {0.0, 0.4}) {
      for (const auto& [level, wanted] : levels) {
        const std::string title =
            std::string("triangles/") + name + (angle > 0 ? " turned/" : "/") + level;
        benchmark::RegisterBenchmark(title.c_str(), prove, section, angle, wanted)
            ->Unit(benchmark::kMillisecond);
      }
    }
  }
  return 0;
}();

}  // namespace
