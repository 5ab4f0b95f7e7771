// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cstdint>
#include <variant>
#include <vector>

#include "solver/scheme/assembly.hpp"
#include "solver/scheme/basis.hpp"
#include "solver/scheme/network.hpp"
#include "tests/laws/random_section.hpp"

namespace quoin::testing {
namespace {

constexpr std::uint64_t sections = 60;
constexpr double coarse = 3;       // cells on a strip of one metre; two on a short one
constexpr double rounding = 1e-9;  // relative, of the linear solves

/// The lower scheme spoilt: cells joined by the arithmetic mean of their conductivities.
double low_by_arithmetic_mean(const Problem& problem) {
  const geometry::Mesh mesh = problem.mesh(coarse);
  const solver::Physics physics = problem.physics();
  solver::Assembly assembly = solver::cell_centred(mesh, physics);
  const auto conductivity = [&](std::size_t i, std::size_t j) {
    const auto* region = std::get_if<RegionId>(&mesh.cell(i, j).below);
    return region != nullptr ? physics.conductivity[*region] : 0.0;
  };
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const std::size_t cell = j * mesh.columns() + i;
      const double dx = mesh.x[i + 1] - mesh.x[i], dy = mesh.y[j + 1] - mesh.y[j];
      if (assembly.network.east[cell] > 0.0) {
        const double mean = (conductivity(i, j) + conductivity(i + 1, j)) / 2;
        assembly.network.east[cell] = mean * dy / ((dx + mesh.x[i + 2] - mesh.x[i + 1]) / 2);
      }
      if (assembly.network.north[cell] > 0.0) {
        const double mean = (conductivity(i, j) + conductivity(i, j + 1)) / 2;
        assembly.network.north[cell] = mean * dx / ((dy + mesh.y[j + 2] - mesh.y[j + 1]) / 2);
      }
    }
  }
  const solver::Network network(std::move(assembly), {});
  return solver::couplings(network.basis(physics.air), physics.air)[1];
}

}  // namespace

TEST_CASE("on sixty random sections the bracket holds on every grid and shrinks") {
  for (std::uint64_t seed = 1; seed <= sections; ++seed) {
    CAPTURE(seed);
    const Problem problem = random_section(seed);
    double highest_low = 0.0, lowest_high = 1e9, width = 1e9;
    for (const int doublings : {0, 1, 2, 3}) {
      const solver::Coupling bracket = problem.couplings(coarse, doublings).front();
      highest_low = std::max(highest_low, bracket.low);
      lowest_high = std::min(lowest_high, bracket.high);
      CHECK(bracket.high - bracket.low < width);
      width = bracket.high - bracket.low;
    }
    // Every low of every grid is below every high of every grid: the truth lies between.
    CHECK(highest_low <= lowest_high * (1 + rounding));
  }
}

TEST_CASE("with the arithmetic mean in the place of the series conductance the bracket breaks") {
  int broken = 0;
  for (std::uint64_t seed = 1; seed <= sections; ++seed) {
    const Problem problem = random_section(seed);
    const double high = problem.couplings(coarse, 3).front().high;
    if (low_by_arithmetic_mean(problem) > high * (1 + rounding)) ++broken;
  }
  MESSAGE("broken on " << broken << " of " << sections);
  CHECK(broken >= static_cast<int>(sections) / 2);
}

TEST_CASE("the middle of the bracket is nearer to the truth than its ends, as a rule") {
  int better = 0;
  for (std::uint64_t seed = 1; seed <= sections; ++seed) {
    const Problem problem = random_section(seed);
    const solver::Coupling bracket = problem.couplings(coarse).front();
    const double truth = problem.couplings(coarse, 3).front().value;
    const double nearest_end =
        std::min(std::abs(bracket.low - truth), std::abs(bracket.high - truth));
    if (std::abs(bracket.value - truth) <= nearest_end) ++better;
  }
  MESSAGE("better on " << better << " of " << sections);
  CHECK(better >= static_cast<int>(sections) * 7 / 10);
}

}  // namespace quoin::testing
