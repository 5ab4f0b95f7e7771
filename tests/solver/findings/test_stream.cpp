// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>

#include "solver/findings/stream.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::Problem;
using testing::WithinAbs;
using testing::WithinRel;

const SpaceId inside(0u), outside(1u);

Solution solved(const Problem& problem) {
  return problem.solution({inside}, outside, std::nullopt, 0.01);
}

double highest(const Stream& stream) {
  return *std::max_element(stream.value.begin(), stream.value.end());
}

/// The heat that flows in from an air by the lower bound, W/m.
double lower_flow(const Problem& problem, const Solution& solution) {
  return solution.couplings.front().low *
         (problem.temperatures()[inside] - problem.temperatures()[outside]);
}

/// A slab of 1 m with a hollow in the middle that has an air of its own.
Problem with_flue(double temperature) {
  Problem problem = testing::layered_wall({{0.5, 0.8}});
  const SpaceId flue = problem.space(temperature, 0.1);
  problem.paint(flue, 0.2, 0.3, 0.4, 0.6);
  return problem;
}

}  // namespace

TEST_CASE("in a plain wall the flow lines are straight and equally spaced") {
  const Problem problem = testing::layered_wall({{0.015, 0.7}, {0.33, 0.8}, {0.04, 0.05}});
  const Solution solution = solved(problem);
  const Stream stream = stream_of(solution, problem.temperatures());
  // exact: heat flow density of layers in series
  const double density = 20.0 / (0.13 + 0.015 / 0.7 + 0.33 / 0.8 + 0.04 / 0.05 + 0.04);
  for (std::size_t n = 0; n < stream.value.size(); ++n) {
    if (solution.field.solid[n] == 0) continue;
    // bound: the linear solver's relative residual
    CHECK(stream.value[n] == WithinAbs{density * solution.field.mesh.place(n).y, 1e-8 * density});
  }
  CHECK(stream.is_cut.empty());
}

TEST_CASE("flow lines of a wall with a better part are not equally spaced") {
  Problem problem = testing::layered_wall({{0.33, 0.8}});
  problem.paint(problem.material(0.1), 0.0, 0.33, 0.0, 0.5);
  const Stream stream = stream_of(solved(problem), problem.temperatures());
  const Solution solution = solved(problem);
  double below = 0.0;  // what flows through the lower half
  for (std::size_t n = 0; n < stream.value.size(); ++n) {
    if (solution.field.mesh.place(n).y == 0.5) below = std::max(below, stream.value[n]);
  }
  CHECK(below < 0.4 * highest(stream));
  CHECK(below > 0.1 * highest(stream));
}

TEST_CASE("between the outermost flow lines of a corner flows all its heat") {
  const Problem problem = testing::external_corner(0.3, 0.77, 0.13);
  const Solution solution = solved(problem);
  const Stream stream = stream_of(solution, problem.temperatures());
  CHECK(highest(stream) == WithinRel{lower_flow(problem, solution), 1e-8});
  CHECK(*std::min_element(stream.value.begin(), stream.value.end()) == 0.0);
}

TEST_CASE("heat flows with the higher values on its left") {
  const Problem warm_left = testing::layered_wall({{0.2, 0.8}});
  const Solution solution = solved(warm_left);
  const Stream stream = stream_of(solution, warm_left.temperatures());
  const geometry::Mesh& mesh = solution.field.mesh;
  std::size_t i = 0;
  while (mesh.x[i] < 0.1) ++i;
  CHECK(stream.value[mesh.node(i, mesh.rows())] > stream.value[mesh.node(i, 0)]);
}

TEST_CASE("cut planes are flow lines themselves") {
  const Problem problem = testing::external_corner(0.3, 0.77, 0.13);
  const Solution solution = solved(problem);
  const Stream stream = stream_of(solution, problem.temperatures());
  const geometry::Mesh& mesh = solution.field.mesh;
  const double all = highest(stream);
  for (std::size_t n = 0; n < stream.value.size(); ++n) {
    if (solution.field.solid[n] == 0 || mesh.place(n).x != mesh.x.back()) continue;
    CHECK(std::min(stream.value[n], all - stream.value[n]) == WithinAbs{0.0, 1e-8 * all});
  }
}

TEST_CASE(
    "round a hollow that gives or takes heat the lines are cut, round one that does not they "
    "close") {
  const Problem cold = with_flue(0.0);
  const Stream stream = stream_of(solved(cold), cold.temperatures());
  const auto cut =
      static_cast<std::size_t>(std::count(stream.is_cut.begin(), stream.is_cut.end(), 1));
  CHECK(cut > 0);
  CHECK(cut <= solved(cold).field.mesh.columns());
}

TEST_CASE("a gap without air interrupts no flow line: none crosses it") {
  Problem problem = testing::layered_wall({{0.5, 0.8}});
  problem.paint(std::monostate{}, 0.2, 0.3, 0.4, 0.6);
  const Solution solution = solved(problem);
  const Stream stream = stream_of(solution, problem.temperatures());
  CHECK(stream.is_cut.empty());
  double low = 1e9, high = -1e9;
  for (std::size_t n = 0; n < stream.value.size(); ++n) {
    const geometry::Point place = solution.field.mesh.place(n);
    const bool on_gap = place.x >= 0.2 - 1e-9 && place.x <= 0.3 + 1e-9 && place.y >= 0.4 - 1e-9 &&
                        place.y <= 0.6 + 1e-9;
    const bool on_rim = std::abs(place.x - 0.2) < 1e-9 || std::abs(place.x - 0.3) < 1e-9 ||
                        std::abs(place.y - 0.4) < 1e-9 || std::abs(place.y - 0.6) < 1e-9;
    if (!on_gap || !on_rim) continue;
    low = std::min(low, stream.value[n]);
    high = std::max(high, stream.value[n]);
  }
  CHECK(high - low == WithinAbs{0.0, 1e-8 * highest(stream)});  // all its rim is one flow line
}

}  // namespace quoin::solver
