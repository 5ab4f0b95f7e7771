// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <functional>
#include <vector>

#include "solver/linear/linear.hpp"
#include "solver/linear/multigrid/conjugate_gradients.hpp"
#include "solver/linear/multigrid/multigrid.hpp"
#include "tests/benchmarks/linear/networks.hpp"
#include "tests/solver/random_network.hpp"
#include "tests/support/within.hpp"

namespace {

using namespace quoin::solver;
using quoin::testing::Chance;
using quoin::testing::plain_network;
using quoin::testing::random_network;
using quoin::testing::WithinRel;

/// In panels, columns along j.
template <typename T>
Conductances<T> panelled(const FivePointOperator& network, Arena& arena) {
  Conductances<T> result(panel_layout(network.nx, network.ny), false, arena);
  const PanelLayout& layout = result.layout;
  for (std::size_t j = 0; j < network.ny; ++j) {
    for (std::size_t i = 0; i < network.nx; ++i) {
      const std::size_t place = j * lane_count + layout.lane_of(i);
      const std::size_t slot = layout.slot_of(i);
      const std::size_t node = j * network.nx + i;
      result.east[slot][place] = static_cast<T>(network.east[node]);
      result.north[slot][place] = static_cast<T>(network.north[node]);
      result.ground[slot][place] = static_cast<T>(network.ground[node]);
    }
  }
  result.write_ghosts();
  result.narrow_rows();
  return result;
}

template <typename T>
using Field = std::vector<T>;  // slot after slot

template <typename T>
Field<T> random_field(const FivePointOperator& network, std::uint64_t seed) {
  Chance chance(seed);
  const PanelLayout layout = panel_layout(network.nx, network.ny);
  Field<T> result(layout.slot_count() * layout.panel_size(), T{0});
  for (std::size_t i = 0; i < network.nx; ++i) {
    for (std::size_t j = 0; j < network.ny; ++j) {
      result[layout.slot_of(i) * layout.panel_size() + j * lane_count + layout.lane_of(i)] =
          static_cast<T>(chance.share() - 0.5);
    }
  }
  return result;
}

template <typename T>
Field<T> cycled(Multigrid<T>& multigrid, const Field<T>& rhs) {
  const std::size_t size = multigrid.layout().panel_size();
  for (std::size_t k = 0; k < rhs.size(); ++k) multigrid.rhs()[k / size][k % size] = rhs[k];
  multigrid.cycle(Member(0, 1, nullptr));
  Field<T> result(rhs.size());
  for (std::size_t k = 0; k < rhs.size(); ++k) result[k] = multigrid.x()[k / size][k % size];
  return result;
}

template <typename T>
double product(const Field<T>& a, const Field<T>& b) {
  double result = 0.0;
  for (std::size_t k = 0; k < a.size(); ++k) {
    result += static_cast<double>(a[k]) * static_cast<double>(b[k]);
  }
  return result;
}

LinearReport solved(const FivePointOperator& network, const std::vector<double>& rhs,
                    double tolerance) {
  LinearOptions options;
  options.tolerance = tolerance;
  options.direct_limit = 0;
  std::vector<double> temperatures(rhs.size(), 0.0);
  return linear_solver(network, options)->solve(rhs, temperatures).front();
}

/// Iterations that conjugate gradients preconditioned by the diagonal alone need.
int diagonal_iterations(const FivePointOperator& network, const std::vector<double>& rhs,
                        double tolerance, int limit) {
  const std::size_t n = network.size();
  std::vector<double> diagonal = network.ground;
  for (std::size_t k = 0; k < n; ++k) {
    diagonal[k] += network.east[k] + network.north[k];
    if (k % network.nx > 0) diagonal[k] += network.east[k - 1];
    if (k >= network.nx) diagonal[k] += network.north[k - network.nx];
  }
  std::vector<double> r = rhs;
  std::vector<double> p(n, 0.0);
  std::vector<double> image(n);
  const std::vector<double> zero(n, 0.0);
  const double goal = tolerance * tolerance * product(rhs, rhs);
  double last = 1.0;
  for (int iteration = 0; iteration < limit; ++iteration) {
    if (product(r, r) <= goal) return iteration;
    std::vector<double> z(n, 0.0);
    for (std::size_t k = 0; k < n; ++k) z[k] = diagonal[k] > 0.0 ? r[k] / diagonal[k] : 0.0;
    const double now = product(r, z);
    for (std::size_t k = 0; k < n; ++k) p[k] = z[k] + (iteration == 0 ? 0.0 : now / last) * p[k];
    write_residual(network, zero, p, image);  // -A p
    const double step = -now / product(p, image);
    for (std::size_t k = 0; k < n; ++k) r[k] += step * image[k];
    last = now;
  }
  return limit;
}

/// By how much one cycle shrinks what it shrinks least, when the coarse networks are spoilt.
double contraction(const FivePointOperator& network,
                   const std::function<void(Conductances<double>&)>& spoil) {
  Arena arena(0);
  Conductances<double> coarse;
  Conductances<double> first = panelled<double>(network, arena);
  Panels<double> work(Level<double>::work_layout(first.layout, 1), arena);
  Level<double> level(first, coarse, {}, arena, work);
  spoil(coarse);
  coarse.write_ghosts();
  const PanelLayout layout = level.layout();
  Multigrid<double> below(coarse, {}, arena);
  const Conductances<double> fine = panelled<double>(network, arena);
  ConjugateGradients residual_of(fine, {}, arena);
  const Member alone(0, 1, nullptr);
  // Power iteration on error -> error - cycle(A error), from noise.
  const Field<double> start = random_field<double>(network, 1);
  const std::size_t size = layout.panel_size();
  for (std::size_t k = 0; k < start.size(); ++k) residual_of.x[k / size][k % size] = start[k];
  residual_of.clear_inactive(alone);
  double before = 1.0;
  double factor = 0.0;
  for (int step = 0; step < 30; ++step) {
    double squares = 0.0;
    for (std::size_t q = 0; q < layout.slot_count(); ++q) {
      std::fill_n(residual_of.residual[q], size, 0.0);
    }
    (void)residual_of.subtract_image(alone);  // -A error
    for (std::size_t q = 0; q < layout.slot_count(); ++q) {
      std::copy_n(residual_of.residual[q], size, level.rhs[q]);
    }
    level.descend(alone, below.rhs());
    below.cycle(alone);
    level.ascend(alone, below.x(), nullptr);
    for (std::size_t q = 0; q < layout.slot_count(); ++q) {
      for (std::size_t k = 0; k < size; ++k) {
        double& error = residual_of.x[q][k];
        error += level.x[q][k];
        squares += error * error;
      }
    }
    factor = std::sqrt(squares / before);
    before = squares;
  }
  return factor;
}

}  // namespace

TEST_CASE_TEMPLATE("a cycle is symmetric and positive", T, float, double) {
  for (std::uint64_t seed = 1; seed <= 12; ++seed) {
    CAPTURE(seed);
    const double aspect = seed % 2 == 0 ? 1e4 : 3.0;
    const FivePointOperator network =
        random_network({30 + 9 * seed, 45, 1e4, aspect, static_cast<int>(seed % 5)}, seed);
    Arena arena(0);
    Multigrid<T> multigrid(panelled<T>(network, arena), {}, arena);
    const Field<T> x = random_field<T>(network, 1);
    const Field<T> y = random_field<T>(network, 2);
    const Field<T> mx = cycled(multigrid, x);
    const Field<T> my = cycled(multigrid, y);
    CHECK(product(x, mx) > 0.0);
    CHECK(product(y, my) > 0.0);
    // Rounding of sums whose terms cancel in part, hence not relative to the product itself.
    const double scale = std::sqrt(product(x, mx) * product(y, my));
    const double bound = std::is_same_v<T, float> ? 1e-4 : 1e-12;
    CHECK(std::abs(product(x, my) - product(y, mx)) <= bound * scale);
  }
}

TEST_CASE("columns that conduct nothing along themselves are solved by one cycle") {
  FivePointOperator network = random_network({77, 20, 1e4, 100.0, 0}, 3);
  network.north.assign(network.size(), 0.0);
  Arena arena(0);
  Multigrid<double> multigrid(panelled<double>(network, arena), {}, arena);
  const Field<double> rhs = random_field<double>(network, 4);
  const Field<double> found = cycled(multigrid, rhs);
  const Conductances<double> fine = panelled<double>(network, arena);
  ConjugateGradients check(fine, {}, arena);
  const std::size_t size = fine.layout.panel_size();
  for (std::size_t k = 0; k < rhs.size(); ++k) {
    check.x[k / size][k % size] = found[k];
    check.residual[k / size][k % size] = rhs[k];
  }
  const Misfit misfit = check.subtract_image(Member(0, 1, nullptr));
  // Cyclic reduction is exact; weights below 1e-10 are dropped.
  CHECK(misfit.residual <= 1e-16 * misfit.given);
}

TEST_CASE("the graded corner takes at most 14 iterations to 1e-10, whatever its size") {
  for (const std::size_t nodes : {2'000U, 10'000U, 40'000U, 160'000U}) {
    CAPTURE(nodes);
    const auto sample = quoin::benchmarks::corner(nodes, {1e3});
    const LinearReport report = solved(sample.network, sample.rhs, 1e-10);
    CHECK(report.iterations <= 14);
    CHECK(report.iterations >= 4);  // a real count
    CHECK(report.single_precision);
  }
  // The twin: without the hierarchy hundreds are not enough.
  const auto sample = quoin::benchmarks::corner(10'000, {1e3});
  CHECK(diagonal_iterations(sample.network, sample.rhs, 1e-10, 500) == 500);
}

TEST_CASE("aluminium in a reveal and in ISO 10211 case 2 takes at most 16 iterations") {
  // Many sizes, hence many layouts; the reveal has voids in two of its corners.
  for (std::size_t nodes = 200; nodes <= 40'000; nodes += 40 + nodes / 7) {
    CAPTURE(nodes);
    // Gradings with aspect ratios of cells up to 1e4.
    const auto reveal = quoin::benchmarks::reveal(nodes, {100.0});
    CHECK(solved(reveal.network, reveal.rhs, 1e-10).iterations <= 16);
    const auto case_2 = quoin::benchmarks::case_2(nodes, {100.0});
    CHECK(solved(case_2.network, case_2.rhs, 1e-10).iterations <= 16);
  }
}

TEST_CASE("a cycle remembers nothing of the one before") {
  for (std::size_t nodes = 300; nodes <= 20'000; nodes += nodes / 5) {
    CAPTURE(nodes);
    const FivePointOperator network = quoin::benchmarks::reveal(nodes, {10.0}).network;
    Arena arena(0);
    Multigrid<float> multigrid(panelled<float>(network, arena), {}, arena);
    const Field<float> x = random_field<float>(network, 1);
    const Field<float> before = cycled(multigrid, x);
    (void)cycled(multigrid, random_field<float>(network, 2));
    CHECK(cycled(multigrid, x) == before);
  }
}

TEST_CASE("a cycle shrinks every error, unless the coarse network is wrong") {
  const FivePointOperator network = random_network({120, 100, 100.0, 3.0, 2}, 6);
  const auto scaled = [](Panels<double> Conductances<double>::*which, double factor) {
    return [=](Conductances<double>& coarse) {
      for (std::size_t q = 0; q < coarse.layout.slot_count(); ++q) {
        double* values = (coarse.*which)[q];
        for (std::size_t k = 0; k < coarse.layout.panel_size(); ++k) values[k] *= factor;
      }
    };
  };
  const double right = contraction(network, [](Conductances<double>&) {});
  const double east = contraction(network, scaled(&Conductances<double>::east, 2.0));
  const double north = contraction(network, scaled(&Conductances<double>::north, 3.0));
  const double ground = contraction(network, scaled(&Conductances<double>::ground, 3.0));
  const double tie = contraction(network, scaled(&Conductances<double>::tie, 0.0));
  CHECK(right < 0.2);
  CHECK(east > 0.4);
  CHECK(north > 0.5);
  CHECK(ground > 0.5);
  CHECK(tie > 1.4 * right);
}

TEST_CASE("stretching that single precision cannot bear is solved in double") {
  const auto mild = quoin::benchmarks::case_2(10'000, {1.0});
  CHECK(solved(mild.network, mild.rhs, 1e-10).single_precision);
  const auto harsh = quoin::benchmarks::case_2(40'000, {1e4});
  const LinearReport report = solved(harsh.network, harsh.rhs, 1e-10);
  CHECK_FALSE(report.single_precision);
  CHECK(report.iterations <= 40);
}

TEST_CASE("every layout holds every column once and keeps neighbours in place") {
  for (std::size_t columns = 1; columns <= 700; ++columns) {
    CAPTURE(columns);
    const PanelLayout layout = panel_layout(columns, 3);
    REQUIRE(layout.panel_count() * lane_count >= columns);
    REQUIRE((layout.panel_count() == 1 || layout.panels % 2 == 0));
    const std::size_t last = layout.panels - 1;
    for (std::size_t c = 0; c + 1 < columns; ++c) {
      const std::size_t here = layout.slot_of(c);
      const std::size_t there = layout.slot_of(c + 1);
      const std::size_t up = layout.lane_of(c + 1) - layout.lane_of(c);
      const std::size_t panel = c % layout.panels;
      const std::size_t group = (here - panel) / (layout.panels + 2);
      REQUIRE(here == layout.slot(group, panel));
      const bool next = there == here + 1 && up == 0;
      const bool wraps = panel == last && there == layout.slot(group, 0) && up == 1;
      const bool moves_on = panel == last && there == layout.slot(group + 1, 0) &&
                            layout.lane_of(c) == lane_count - 1 && layout.lane_of(c + 1) == 0;
      REQUIRE((next || wraps || moves_on));
      REQUIRE((layout.panel_count() == 1 || panel % 2 == c % 2));
    }
  }
}
