// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <span>
#include <string>
#include <vector>

#include "solver/linear/errors.hpp"
#include "solver/linear/linear.hpp"
#include "solver/linear/multigrid/panel_kernels.hpp"
#include "tests/solver/random_network.hpp"
#include "tests/support/within.hpp"

namespace {

using namespace quoin::solver;
using quoin::testing::plain_network;
using quoin::testing::random_network;
using quoin::testing::random_sources;
using quoin::testing::RandomNetwork;
using quoin::testing::WithinAbs;

std::vector<double> answer(const FivePointOperator& network, const std::vector<double>& rhs,
                           LinearMethod method, int threads = 1) {
  std::vector<double> temperatures(rhs.size(), 0.0);
  LinearOptions options;
  options.method = method;
  options.threads = threads;
  for (const LinearReport& report : linear_solver(network, options)->solve(rhs, temperatures)) {
    CHECK_FALSE(report.fell_back);
  }
  return temperatures;
}

double largest(const std::vector<double>& values) {
  double result = 0.0;
  for (const double value : values) result = std::max(result, std::abs(value));
  return result;
}

double largest_difference(const std::vector<double>& a, const std::vector<double>& b) {
  double result = 0.0;
  for (std::size_t k = 0; k < a.size(); ++k) result = std::max(result, std::abs(a[k] - b[k]));
  return result;
}

constexpr LinearMethod methods[] = {LinearMethod::multigrid, LinearMethod::direct};

}  // namespace

TEST_CASE("multigrid agrees with the direct factorisation on random networks") {
  for (std::uint64_t seed = 1; seed <= 60; ++seed) {
    CAPTURE(seed);
    RandomNetwork wanted;
    wanted.nx = 2 + 7 * (seed % 13);
    wanted.ny = 2 + 5 * (seed % 17);
    wanted.contrast = seed % 3 == 0 ? 1.0 : 1e4;
    wanted.aspect = seed % 2 == 0 ? 1.0 : 1e4;
    wanted.voids = static_cast<int>(seed % 7);
    CAPTURE(wanted.nx);
    CAPTURE(wanted.ny);
    const FivePointOperator network = random_network(wanted, seed);
    const std::vector<double> rhs = random_sources(network, seed);
    const std::vector<double> expected = answer(network, rhs, LinearMethod::direct);
    const std::vector<double> found = answer(network, rhs, LinearMethod::multigrid);
    // Both answers leave a residual near rounding; the bound is what stretching makes of it.
    CHECK(largest_difference(found, expected) <= 1e-9 * largest(expected));
  }
}

TEST_CASE("a network of one node, one row or one column is solved") {
  for (const LinearMethod method : methods) {
    FivePointOperator single = plain_network(1, 1);
    CHECK(answer(single, {3.0}, method) == std::vector<double>{3.0});
    for (const bool upright : {false, true}) {
      for (const std::size_t n : {2U, 3U, 17U, 40U}) {
        FivePointOperator chain = upright ? plain_network(1, n) : plain_network(n, 1);
        chain.ground.assign(n, 0.0);
        chain.ground[0] = 1.0;
        std::vector<double> rhs(n, 0.0);
        rhs[n - 1] = 1.0;  // one watt through n resistances of 1
        const std::vector<double> found = answer(chain, rhs, method);
        for (std::size_t k = 0; k < n; ++k) {
          // Rounding in n steps.
          CHECK(found[k] == WithinAbs{static_cast<double>(k + 1), 1e-11});
        }
      }
    }
  }
}

TEST_CASE("several right-hand sides give to the bit what each gives alone") {
  const FivePointOperator network = random_network({60, 50, 100.0, 10.0, 3}, 7);
  const std::size_t n = network.size();
  std::vector<double> all;
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    const std::vector<double> one = random_sources(network, seed);
    all.insert(all.end(), one.begin(), one.end());
  }
  std::vector<double> together(all.size(), 0.0);
  const auto reports = linear_solver(network, {})->solve(all, together);
  REQUIRE(reports.size() == 3);
  for (std::uint64_t seed = 1; seed <= 3; ++seed) {
    const std::vector<double> alone =
        answer(network, random_sources(network, seed), LinearMethod::multigrid);
    CHECK(std::equal(alone.begin(), alone.end(), together.data() + (seed - 1) * n));
  }
}

TEST_CASE("the number of threads does not change a bit of the answer") {
  // Large enough for three threads to be used.
  const FivePointOperator network = random_network({290, 210, 1e4, 100.0, 5}, 3);
  const std::vector<double> rhs = random_sources(network, 3);
  const std::vector<double> one = answer(network, rhs, LinearMethod::multigrid, 1);
  for (const int threads : {2, 3, 5}) {
    CHECK(answer(network, rhs, LinearMethod::multigrid, threads) == one);
  }
}

TEST_CASE("the width of the machine's registers does not change a bit of the answer") {
  for (const double contrast : {100.0, 1e6}) {  // single precision, then double
    const FivePointOperator network = random_network({90, 70, contrast, contrast, 5}, 3);
    const std::vector<double> rhs = random_sources(network, 3);
    std::vector<std::vector<double>> answers;
    for (const std::size_t register_bytes : {16, 32, 64}) {
      LinearOptions options;
      options.register_bytes = register_bytes;
      answers.emplace_back(rhs.size(), 0.0);
      static_cast<void>(linear_solver(network, options)->solve(rhs, answers.back()));
    }
    CHECK(answers[0] == answers[1]);
    CHECK(answers[0] == answers[2]);
  }
}

TEST_CASE("kernels are never wider than asked for or than the machine") {
  CHECK(panel_kernels(16).register_bytes == 16);
  CHECK(panel_kernels(0).register_bytes == 16);
  CHECK(panel_kernels(32).register_bytes <= 32);
  CHECK(panel_kernels(64).register_bytes >= panel_kernels(32).register_bytes);
}

TEST_CASE("a solver used again gives the same bits") {
  const FivePointOperator network = random_network({50, 70, 1e4, 1e4, 5}, 4);
  const std::vector<double> rhs = random_sources(network, 4);
  for (const LinearMethod method : methods) {
    LinearOptions options;
    options.method = method;
    const auto solver = linear_solver(network, options);
    std::vector<double> first(rhs.size(), 0.0);
    std::vector<double> second(rhs.size(), 0.0);
    (void)solver->solve(rhs, first);
    (void)solver->solve(rhs, second);
    CHECK(first == second);
  }
}

TEST_CASE("a grid turned over its diagonal gives the field turned over") {
  const FivePointOperator network = random_network({70, 40, 1e3, 10.0, 3}, 5);
  FivePointOperator turned = plain_network(40, 70);
  const auto turn = [&](const std::vector<double>& values) {
    std::vector<double> result(values.size());
    for (std::size_t j = 0; j < 40; ++j) {
      for (std::size_t i = 0; i < 70; ++i) result[i * 40 + j] = values[j * 70 + i];
    }
    return result;
  };
  turned.east = turn(network.north);
  turned.north = turn(network.east);
  turned.ground = turn(network.ground);
  const std::vector<double> rhs = random_sources(network, 5);
  const std::vector<double> field = answer(network, rhs, LinearMethod::multigrid);
  // Columns follow the shorter side, so both are the same computation.
  CHECK(answer(turned, turn(rhs), LinearMethod::multigrid) == turn(field));
}

TEST_CASE("inactive nodes get 0, whatever their right-hand side and first guess") {
  FivePointOperator network = plain_network(8, 9);
  for (const std::size_t node : {3U * 8 + 3, 3U * 8 + 4}) {
    network.east[node - 1] = network.east[node] = 0.0;
    network.north[node - 8] = network.north[node] = 0.0;
  }
  std::vector<double> rhs(network.size(), 0.0);
  rhs[70] = 1.0;
  for (const LinearMethod method : methods) {
    const std::vector<double> expected = answer(network, rhs, method);
    CHECK(expected[3 * 8 + 3] == 0.0);
    std::vector<double> spoilt = rhs;
    spoilt[3 * 8 + 3] = 1e6;
    std::vector<double> found(rhs.size(), 0.0);
    found[3 * 8 + 4] = std::numeric_limits<double>::quiet_NaN();
    LinearOptions options;
    options.method = method;
    (void)linear_solver(network, options)->solve(spoilt, found);
    CHECK(found == expected);
  }
}

TEST_CASE("nothing put in gives 0 everywhere") {
  const FivePointOperator network = plain_network(20, 20);
  for (const LinearMethod method : methods) {
    LinearOptions options;
    options.method = method;
    std::vector<double> found(network.size(), 7.0);
    (void)linear_solver(network, options)->solve(std::vector<double>(network.size(), 0.0), found);
    CHECK(found == std::vector<double>(network.size(), 0.0));
  }
}

TEST_CASE("a part without ground is refused by one of its nodes") {
  FivePointOperator network = plain_network(6, 5);
  CHECK_NOTHROW(linear_solver(network, {}));  // the twin: one part, with ground
  for (std::size_t j = 0; j < 5; ++j) network.east[j * 6 + 2] = 0.0;  // cuts off the east half
  CHECK_THROWS_WITH_AS(linear_solver(network, {}),
                       "the part of the network at node (3, 0) has no way to ground", SolveError);
  network.ground[4 * 6 + 5] = 1e-9;  // ever so little is enough
  CHECK_NOTHROW(linear_solver(network, {}));
}

TEST_CASE("a part is found connected however it winds") {
  // A comb: teeth joined in the last row only, so that runs meet late.
  FivePointOperator network = plain_network(9, 7);
  network.ground.assign(network.size(), 0.0);
  for (std::size_t j = 0; j + 1 < 7; ++j) {
    for (std::size_t i = 0; i < 9; ++i) network.east[j * 9 + i] = 0.0;
  }
  CHECK_THROWS_AS(linear_solver(network, {}), SolveError);
  network.ground[8] = 1.0;
  CHECK_NOTHROW(linear_solver(network, {}));
  network.east[6 * 9 + 4] = 0.0;  // one link less: the western teeth hang free
  CHECK_THROWS_WITH_AS(linear_solver(network, {}),
                       "the part of the network at node (0, 0) has no way to ground", SolveError);
}

TEST_CASE("arrays of wrong size or with impossible values are refused") {
  const FivePointOperator good = plain_network(4, 4);
  FivePointOperator network = good;
  network.east.pop_back();
  CHECK_THROWS_AS(linear_solver(network, {}), std::invalid_argument);
  network = good;
  network.north[1] = -1.0;
  CHECK_THROWS_AS(linear_solver(network, {}), std::invalid_argument);
  network = good;
  network.ground[1] = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(linear_solver(network, {}), std::invalid_argument);
  network = good;
  network.east[3] = 1.0;  // leads out of the grid
  CHECK_THROWS_AS(linear_solver(network, {}), std::invalid_argument);
  for (const LinearMethod method : methods) {
    LinearOptions options;
    options.method = method;
    const auto solver = linear_solver(good, options);
    std::vector<double> rhs(17, 1.0);
    std::vector<double> found(17, 0.0);
    CHECK_THROWS_AS(solver->solve(rhs, found), std::invalid_argument);
  }
}

TEST_CASE("a tolerance out of reach within the iterations allowed is an error") {
  const FivePointOperator network = random_network({60, 60, 1e4, 100.0, 3}, 8);
  const std::vector<double> rhs = random_sources(network, 8);
  LinearOptions options;
  options.iteration_limit = 2;
  options.direct_limit = network.size() - 1;
  std::vector<double> found(rhs.size(), 0.0);
  CHECK_THROWS_AS(linear_solver(network, options)->solve(rhs, found), SolveError);
  options.iteration_limit = 200;
  CHECK_NOTHROW(linear_solver(network, options)->solve(rhs, found));
}

TEST_CASE("the reported residual is that of the answer") {
  const FivePointOperator network = random_network({60, 60, 1e2, 10.0, 3}, 9);
  const std::vector<double> rhs = random_sources(network, 9);
  LinearOptions options;
  options.tolerance = 1e-6;
  std::vector<double> found(rhs.size(), 0.0);
  const LinearReport report = linear_solver(network, options)->solve(rhs, found).front();
  std::vector<double> residual(rhs.size());
  write_residual(network, rhs, found, residual);
  double left = 0.0;
  double given = 0.0;
  for (std::size_t k = 0; k < rhs.size(); ++k) {
    const bool active = found[k] != 0.0;
    left += active ? residual[k] * residual[k] : 0.0;
    given += active ? rhs[k] * rhs[k] : 0.0;
  }
  CHECK(report.residual <= 1e-6);
  CHECK(report.residual > 1e-12);  // it stopped when it was good enough
  // Sums in another order.
  CHECK(report.residual == quoin::testing::WithinRel{std::sqrt(left / given), 1e-6});
}
