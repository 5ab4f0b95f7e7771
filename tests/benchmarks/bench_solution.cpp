// SPDX-License-Identifier: Apache-2.0
// Sections solved to a wanted accuracy, by grids cut where they matter and, for the same accuracy,
// by halving every cell: what the cutting saves.
#include <benchmark/benchmark.h>

#include <optional>

#include "solver/accuracy/bracket.hpp"
#include "solver/accuracy/place_value.hpp"
#include "tests/support/problem.hpp"

namespace {

using namespace quoin;
using geometry::RegionId;
using geometry::SpaceId;
using testing::Problem;

const SpaceId room{0}, outside{1};

/// T7, a brick corner.
Problem corner() {
  Problem problem;
  problem.space(20, 0.13);
  problem.space(0, 0.04);
  problem.paint(outside, -0.1, 1.3, -0.1, 1.3);
  problem.paint(problem.material(0.75), 0, 1.3, 0, 1.3);
  problem.paint(room, 0.3, 1.3, 0.3, 1.3);
  return problem;
}

/// A window jamb with an aluminium cill plate of 3 mm run through it.
Problem jamb_with_aluminium() {
  Problem problem;
  problem.space(20, 0.25);
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

void note(benchmark::State& state, std::size_t nodes, double band) {
  state.counters["nodes"] = static_cast<double>(nodes);
  state.counters["fRsi_band"] = band;
}

void cut_where_it_matters(benchmark::State& state, Problem (*section)(), double factor,
                          std::optional<double> coupling) {
  const Problem problem = section();
  solver::Solution solution;
  for (auto _ : state) solution = problem.solution({room}, outside, factor, coupling);
  note(state, solution.field.mesh.nx() * solution.field.mesh.ny(),
       solution.airs.front().coldest.factor.band);
}

void halved_everywhere(benchmark::State& state, Problem (*section)(), double factor,
                       std::optional<double> coupling) {
  const Problem problem = section();
  const geometry::Point place =
      problem.solution({room}, outside, factor, std::nullopt).airs.front().coldest.place;
  std::size_t nodes = 0;
  double band = 0.0;
  for (auto _ : state) {
    std::optional<solver::TwoSided> before;
    for (int doublings = 0;; ++doublings) {
      const solver::Physics physics = problem.physics();
      const solver::BothSchemes both =
          solver::both_schemes(problem.mesh(8, doublings), physics, {});
      const solver::BothTemperatures temperatures(both, physics, problem.temperatures());
      const solver::TwoSided value = solver::place_value(both, physics, temperatures, place).value;
      const solver::Coupling bracket = solver::brackets_of(both, physics).couplings.front();
      nodes = both.field.solid.size();
      if (before) {
        band = solver::estimate_of(*before, value).band / 20;
        const bool narrow =
            !coupling || bracket.high - bracket.low <= 2 * *coupling * bracket.value;
        if ((band <= factor && narrow) || nodes > 500'000) break;
      }
      before = value;
    }
  }
  note(state, nodes, band);
}

#define QUOIN_SECTION(name, ...)                                                             \
  BENCHMARK_CAPTURE(cut_where_it_matters, name, __VA_ARGS__)->Unit(benchmark::kMillisecond); \
  BENCHMARK_CAPTURE(halved_everywhere, name, __VA_ARGS__)->Unit(benchmark::kMillisecond)

QUOIN_SECTION(corner by default, corner, 0.002, 0.001);
QUOIN_SECTION(corner to 0.0005, corner, 0.0005, std::nullopt);
QUOIN_SECTION(jamb with aluminium by default, jamb_with_aluminium, 0.002, 0.001);
QUOIN_SECTION(jamb with aluminium to 2.5 mK of 20 K, jamb_with_aluminium, 0.000125, std::nullopt);

}  // namespace
