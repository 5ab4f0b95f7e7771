// SPDX-License-Identifier: Apache-2.0
#include "solver/accuracy/refinement.hpp"

#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>
#include <vector>

#include "tests/support/problem.hpp"

namespace quoin::solver {
namespace {

using geometry::Outline;
using testing::Problem;

const SpaceId room{0}, outside{1};
constexpr std::size_t default_limit = 1'000'000;

std::size_t nodes_of(const Solution& solution) {
  return solution.field.mesh.nx() * solution.field.mesh.ny();
}

double narrowest(const geometry::Mesh& mesh) {
  double least = mesh.x[1] - mesh.x[0];
  for (const std::vector<double>* lines : {&mesh.x, &mesh.y}) {
    for (std::size_t k = 1; k < lines->size(); ++k) {
      least = std::min(least, (*lines)[k] - (*lines)[k - 1]);
    }
  }
  return least;
}

/// A board of n by n squares between room and outside, behind a cover; `depth` of it 0: none.
Problem checkerboard(std::size_t n, double poor, double good, double depth) {
  Problem problem;
  problem.space(20, 0.13);
  problem.space(0, 0.04);
  const double side = 0.06, all = side * static_cast<double>(n);
  problem.paint(room, -depth - 0.1, -depth, 0, all);
  problem.paint(outside, all + depth, all + depth + 0.1, 0, all);
  const RegionId cover = problem.material(0.8), one = problem.material(poor),
                 other = problem.material(good);
  if (depth > 0.0) problem.paint(cover, -depth, all + depth, 0, all);
  for (std::size_t j = 0; j < n; ++j) {
    for (std::size_t i = 0; i < n; ++i) {
      const double x = side * static_cast<double>(i), y = side * static_cast<double>(j);
      problem.paint((i + j) % 2 == 0 ? one : other, x, x + side, y, y + side);
    }
  }
  return problem;
}

/// Both purposes at the accuracy that the program asks for where nothing else is said.
std::vector<Solution> solved(const Problem& problem) {
  std::vector<Solution> both;
  both.push_back(problem.solution({room}, outside, 0.002, std::nullopt, {}, default_limit));
  both.push_back(problem.solution({room}, outside, std::nullopt, 0.001, {}, default_limit));
  return both;
}

}  // namespace

TEST_CASE("checkerboards of any contrast are solved or said not to be reached") {
  std::vector<Problem> boards;
  for (const double contrast : {50.0, 400.0}) {
    for (const double depth : {0.02, 0.06})
      boards.push_back(checkerboard(2, 0.1, 0.1 * contrast, depth));
  }
  boards.push_back(checkerboard(10, 0.005, 500, 0.0));
  for (const Problem& board : boards) {
    for (const Solution& solution : solved(board)) {
      // Cutting a graded cell leaves a quarter of it; lines end well above rounding.
      CHECK(narrowest(solution.field.mesh) >= 0.25 * narrowest_cell);
      CHECK(nodes_of(solution) <= 200'000);
      if (!solution.couplings.empty()) {
        const Coupling& coupling = solution.couplings.front();
        CHECK(solution.accurate == (coupling.high - coupling.low <= 0.002 * coupling.value));
      }
    }
  }
}

TEST_CASE("a surface without any resistance to speak of beside thin layers is solved honestly") {
  Problem wall = testing::layered_wall({{1e-4, 200}, {0.3, 0.04}, {1e-4, 0.2}}, 1e-9, 1e-9);
  wall.paint(wall.material(160), 0.05, 0.25, 0.4, 0.41);
  const std::vector<Solution> both = solved(wall);
  CHECK(both.front().accurate);
  // On finer grids the balance drowns in rounding: then the grid before is the answer.
  const Coupling& coupling = both.back().couplings.front();
  CHECK(both.back().accurate == (coupling.high - coupling.low <= 0.002 * coupling.value));
  CHECK(coupling.high - coupling.low < 0.03 * coupling.value);
}

TEST_CASE("no spot may yet be colder than the coldest by more than its band") {
  // A fin of 2 mm of metal into the room: its root is small and cold.
  Problem problem;
  problem.space(20, 0.13);
  problem.space(0, 0.04);
  problem.paint(room, -0.3, 0, 0, 0.8);
  problem.paint(outside, 0.3, 0.4, 0, 0.8);
  problem.paint(problem.material(0.2), 0, 0.3, 0, 0.8);
  problem.paint(problem.material(0.5), 0.05, 0.3, 0.55, 0.62);
  problem.paint(problem.material(50), -0.05, 0.22, 0.3, 0.302);
  const Solution solution =
      problem.solution({room}, outside, 0.002, std::nullopt, {}, default_limit);
  REQUIRE(solution.airs.front().cold_spots.size() >= 2);
  const Estimate& coldest = solution.airs.front().coldest.temperature;
  for (const Spot& spot : solution.airs.front().cold_spots) {
    CHECK(spot.temperature.value - spot.temperature.band >= coldest.value - coldest.band - 1e-9);
  }
}

TEST_CASE("a turned jamb whose slopes no grid follows is as accurate as wanted") {
  // A jamb turned by 0.3 rad.
  const auto box = [](double x0, double x1, double y0, double y1) {
    Outline outline = geometry::rectangle(x0, x1, y0, y1);
    for (geometry::Point& p : outline) {
      p = {std::cos(0.3) * p.x - std::sin(0.3) * p.y, std::sin(0.3) * p.x + std::cos(0.3) * p.y};
    }
    return outline;
  };
  Problem problem;
  problem.space(20, 0.13);
  problem.space(0, 0.04);
  problem.paint(room, box(-0.1, 0, 0, 0.9));
  problem.paint(outside, box(0.4, 0.5, 0, 0.9));
  problem.paint(problem.material(0.77), box(0, 0.4, 0, 0.6));
  problem.paint(room, box(-0.1, 0.2, 0.6, 0.9));
  problem.paint(outside, box(0.26, 0.5, 0.6, 0.9));
  problem.paint(problem.material(0.13, false), box(0.2, 0.26, 0.6, 0.9));
  const Solution solution =
      problem.solution({room}, outside, 0.002, std::nullopt, {}, default_limit);
  REQUIRE(solution.field.mesh.section.deviation > 0.0);
  REQUIRE(solution.triangles.has_value());
  CHECK(solution.airs.front().coldest.factor.band <= 0.002);
  CHECK(solution.accurate);
}

TEST_CASE("the more a band lacks the more of the grid is cut at once and never nothing") {
  const Problem corner = checkerboard(2, 0.5, 1.5, 0.06);
  const geometry::Subdivision grid = geometry::subdivision_of(corner.section(), 8);
  const geometry::Mesh mesh = geometry::mesh_of(corner.section(), grid);
  Blame blame = no_blame(mesh);
  for (std::size_t k = 0; k < blame.columns.size(); ++k) {
    blame.columns[k] = 1.0 / static_cast<double>(k + 1);
  }
  std::size_t before = geometry::nodes(grid);
  for (const double shortfall : {1.01, 2.0, 100.0}) {
    const std::size_t nodes = geometry::nodes(cut_where_it_matters(grid, mesh, blame, shortfall));
    CHECK(nodes > before);
    before = nodes;
  }
  CHECK(geometry::nodes(cut_where_it_matters(grid, mesh, no_blame(mesh), 100.0)) ==
        geometry::nodes(grid));
}

TEST_CASE("refinement ends where its pace says that the limit comes first") {
  Progress steady;
  for (const auto& [nodes, shortfall] :
       {std::pair{std::size_t{1000}, 64.0}, {4000, 16.0}, {16'000, 4.0}})
    steady.note(nodes, shortfall);  // at this pace 64,000 nodes do
  CHECK(steady.is_worth_while(100'000));
  CHECK_FALSE(steady.is_worth_while(50'000));
  Progress slow;
  for (const auto& [nodes, shortfall] :
       {std::pair{std::size_t{1000}, 64.0}, {4000, 60.0}, {16'000, 56.0}})
    slow.note(nodes, shortfall);
  CHECK_FALSE(slow.is_worth_while(default_limit));
  Progress small;
  small.note(100, 64.0);
  small.note(1000, 64.0);
  CHECK(small.is_worth_while(default_limit));
}

}  // namespace quoin::solver
