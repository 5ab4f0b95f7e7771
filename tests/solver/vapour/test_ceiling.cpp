// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

#include "solver/vapour/ceiling.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

/// A network of random conductances, grounded along its left side at 1 and its right side at 0,
/// under a random ceiling.
solver::CeilingProblem random_problem(std::uint32_t seed, std::size_t nx, std::size_t ny) {
  std::mt19937 random(seed);
  const auto between = [&](double low, double high) {
    return low + (high - low) * static_cast<double>(random()) / 4294967296.0;
  };
  const std::vector<double> zeros(nx * ny, 0.0);
  solver::CeilingProblem problem{
      {nx, ny, zeros, zeros, zeros}, zeros, zeros, std::vector<char>(nx * ny, 0), zeros};
  for (std::size_t n = 0; n < nx * ny; ++n) {
    if (n % nx + 1 < nx) problem.network.east[n] = std::pow(10.0, between(-2, 2));
    if (n / nx + 1 < ny) problem.network.north[n] = std::pow(10.0, between(-2, 2));
    if (n % nx == 0) {
      problem.network.ground[n] = 1.0;
      problem.source[n] = 1.0;
    }
    if (n % nx + 1 == nx) problem.network.ground[n] = 1.0;
    problem.ceiling[n] = between(0.2, 1.2);
  }
  return problem;
}

}  // namespace

TEST_CASE("below its ceiling a node takes up nothing, at it never less than nothing") {
  for (std::uint32_t seed = 1; seed <= 20; ++seed) {
    CAPTURE(seed);
    const solver::CeilingProblem problem = random_problem(seed, 23, 17);
    const solver::CeilingSolution solution = solver::below_ceiling(problem, {});
    std::vector<double> surplus(problem.source.size());
    solver::write_residual(problem.network, problem.source, solution.potential, surplus);
    std::size_t there = 0;
    for (std::size_t n = 0; n < surplus.size(); ++n) {
      CHECK(solution.potential[n] <= problem.ceiling[n] * (1 + 1e-10));
      CHECK(solution.taken_up[n] >= 0.0);
      CHECK(surplus[n] == WithinAbs{solution.taken_up[n], 1e-8});  // of flows up to 100
      const bool below = solution.potential[n] < problem.ceiling[n] * (1 - 1e-9);
      if (below) CHECK(solution.taken_up[n] == 0.0);
      there += solution.taken_up[n] > 0.0 ? 1 : 0;
    }
    CHECK(there > 0);  // the ceiling matters
    CHECK(solution.iterations < 30);
  }
}

TEST_CASE("without a ceiling the potential rises beyond where one was") {
  solver::CeilingProblem problem = random_problem(3, 23, 17);
  const std::vector<double> ceiling = problem.ceiling;
  problem.ceiling.assign(ceiling.size(), infinite);
  const solver::CeilingSolution solution = solver::below_ceiling(problem, {});
  bool beyond = false;
  for (std::size_t n = 0; n < ceiling.size(); ++n) {
    beyond = beyond || solution.potential[n] > ceiling[n];
    CHECK(solution.taken_up[n] == 0.0);
  }
  CHECK(beyond);
  CHECK(solution.iterations == 1);
}

TEST_CASE("a held node keeps its potential even above the ceiling, and a lone part has none") {
  const std::vector<double> zeros(5, 0.0);
  solver::CeilingProblem problem{{5, 1, {1.0, 1.0, 0.0, 1.0, 0.0}, zeros, {0, 0, 1, 0, 0}},
                                 zeros,
                                 std::vector<double>(5, 0.4),
                                 {1, 0, 0, 0, 0},
                                 {1.0, 0, 0, 0, 0}};
  const solver::CeilingSolution solution = solver::below_ceiling(problem, {});
  CHECK(solution.potential[0] == 1.0);
  CHECK(solution.potential[1] == 0.4);
  CHECK(solution.potential[2] == WithinAbs{0.2, 1e-12});
  CHECK(solution.taken_up[1] == WithinAbs{0.4, 1e-12});  // 0.6 in, 0.2 out
  CHECK(std::isnan(solution.potential[3]));
  CHECK(std::isnan(solution.potential[4]));
}

}  // namespace quoin::testing
