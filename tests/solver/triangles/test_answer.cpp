// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "solver/triangles/answer.hpp"
#include "tests/geometry/triangles/shapes.hpp"
#include "tests/laws/random_section.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

using geometry::Sheet;
using solver::Answer;
using solver::Claim;

const SpaceId room(0), outside(1);

/// A claim about a problem turned about the origin; bands in fRsi and by L2D.
Claim claim_of(const Problem& problem, double angle, std::optional<double> coupling,
               std::optional<double> factor = {}) {
  Claim claim;
  claim.sheet = geometry::turned(problem.sheet(), angle);
  claim.physics = problem.physics();
  claim.temperatures = problem.temperatures();
  claim.coupling_band = coupling;
  if (!factor) return claim;
  const double span = problem.temperatures()[room] - problem.temperatures()[outside];
  claim.rooms = {room};
  claim.spot_bands = claim.thermometer_bands = {*factor * span};
  claim.probe_band = *factor * span;
  return claim;
}

bool holds(const solver::Coupling& bracket, double truth, double rounding) {
  return bracket.low <= truth + rounding && truth - rounding <= bracket.high;
}

/// A checkerboard of two by two squares, a room on its left and outside on its right.
Problem checkerboard(double contrast) {
  Problem problem;
  problem.space(20, 0.13);
  problem.space(0, 0.04);
  const RegionId one = problem.material(1.0), other = problem.material(contrast);
  problem.paint(one, 0, 1, 0, 1);
  problem.paint(other, 0, 0.5, 0, 0.5);
  problem.paint(other, 0.5, 1, 0.5, 1);
  problem.paint(room, -0.1, 0, 0, 1);
  problem.paint(outside, 1, 1.1, 0, 1);
  return problem;
}

}  // namespace

TEST_CASE("a plane wall turned by any angle is exact on triangles") {
  const Problem wall = layered_wall({{0.02, 0.35}, {0.3, 0.77}, {0.1, 0.035}});
  const double conductance = 1 / (0.13 + 0.02 / 0.35 + 0.3 / 0.77 + 0.1 / 0.035 + 0.04);
  for (const double angle : {0.0, 0.3, 0.4, 1.2}) {
    const Answer answer = solver::answer_of(claim_of(wall, angle, 1e-6, 1e-6));
    CHECK(answer.reached);
    const solver::Coupling& bracket = answer.couplings.front();
    CHECK(bracket.value == WithinRel{conductance, 1e-9});
    CHECK(bracket.high - bracket.low == WithinAbs{0, 1e-9});
    const double surface = 20 - 20 * 0.13 * conductance;
    CHECK(answer.thermometers.front().temperature == WithinAbs{surface, 1e-7});
    CHECK(answer.airs.front().coldest.temperature.value == WithinAbs{surface, 1e-7});
  }
}

// Source of T7: computed by two independent discretisations that bracket the values.
TEST_CASE("the coldest spot of a plane wall drawn to a tenth of a micron is no guess") {
  const Problem wall = layered_wall({{0.02, 0.35}, {0.3, 0.77}, {0.1, 0.035}});
  for (const double angle : {0.3, 0.4, 1.2}) {
    Claim claim = claim_of(wall, angle, 1e-3, 1e-3);
    for (geometry::Patch& patch : claim.sheet) {
      for (geometry::Point& corner : patch.outline)
        corner = {std::round(corner.x * 1e7) / 1e7, std::round(corner.y * 1e7) / 1e7};
    }
    const Answer answer = solver::answer_of(claim);
    CHECK(answer.reached);
    CHECK(answer.airs.front().coldest.temperature.asymptotic);
    CHECK(answer.airs.front().coldest.temperature.band < 1e-5);  // a layer is off by 1e-6 of itself
  }
}

TEST_CASE("the corner T7 has its coupling between proved bounds, straight or turned") {
  for (const double angle : {0.0, 0.4, 2.0}) {
    const Answer answer =
        solver::answer_of(claim_of(external_corner(0.300, 0.75, 0.13), angle, 1e-5));
    CHECK(answer.reached);
    CHECK(holds(answer.couplings.front(), 3.72876, 5e-6));  // known to five decimals
    CHECK_FALSE(holds(answer.couplings.front(), 3.7289, 5e-6));
  }
}

TEST_CASE("the coldest point of the corner T7 is within its band on triangles") {
  for (const double angle : {0.0, 0.4}) {
    const Answer answer =
        solver::answer_of(claim_of(external_corner(0.300, 0.75, 0.13), angle, {}, 5e-4));
    CHECK(answer.reached);
    const solver::Estimate& coldest = answer.airs.front().coldest.temperature;
    CHECK(coldest.value == WithinAbs{0.62146, 5e-4});
    CHECK(std::abs(coldest.value - 0.62146) <= coldest.band + 5e-6);
    const solver::Thermometer& thermometer = answer.thermometers.front();
    CHECK(thermometer.low > coldest.value + 0.002);  // the mean is not the point
    CHECK(thermometer.high - thermometer.low <= 2 * 5e-4 + 1e-12);
  }
}

TEST_CASE("a wider proof holds what a narrower one finds") {
  const Problem corner = external_corner(0.300, 0.77, 0.25);
  const auto proved = [&](double angle, double band) {
    return solver::answer_of(claim_of(corner, angle, band, band)).thermometers.front();
  };
  const solver::Thermometer narrow = proved(0.0, 2e-5);
  for (const double angle : {0.0, 0.4, 1.0}) {
    const solver::Thermometer wide = proved(angle, 2e-3);
    // Windows may differ by what the wider one may leave undecided.
    CHECK(wide.low <= narrow.high + 5e-4);
    CHECK(wide.high >= narrow.low - 1e-9);
  }
}

TEST_CASE("brackets on triangles never contradict those of the tensor grid") {
  for (std::uint64_t seed = 0; seed < 25; ++seed) {
    CAPTURE(seed);
    const Problem problem = random_section(seed);
    const auto grid = problem.couplings(30.0);
    const Answer answer = solver::answer_of(claim_of(problem, 0.4, 2e-3));
    REQUIRE(answer.couplings.size() == grid.size());
    for (std::size_t k = 0; k < grid.size(); ++k) {
      const double rounding = 1e-9 * grid[k].high;
      CHECK(answer.couplings[k].low <= grid[k].high + rounding);
      CHECK(answer.couplings[k].high >= grid[k].low - rounding);
    }
    CHECK(answer.level->identity() < 1e-7);
  }
}

TEST_CASE("three airs round a hollow have brackets that hold those of the tensor grid") {
  Problem problem;
  problem.space(20, 0.13);
  problem.space(0, 0.04);
  const SpaceId duct = problem.space(10, 0.1);
  const RegionId brick = problem.material(0.8);
  problem.paint(brick, 0, 0.6, 0, 0.8);
  problem.paint(duct, 0.2, 0.4, 0.3, 0.5);
  problem.paint(room, -0.1, 0, 0, 0.8);
  problem.paint(outside, 0.6, 0.7, 0, 0.8);
  const auto grid = problem.couplings(40.0, 1);
  const Answer answer = solver::answer_of(claim_of(problem, 0.7, 1e-4));
  CHECK(answer.reached);
  REQUIRE(answer.couplings.size() == 3);
  for (std::size_t k = 0; k < 3; ++k) {
    CHECK(answer.couplings[k].low <= grid[k].high + 1e-9);
    CHECK(answer.couplings[k].high >= grid[k].low - 1e-9);
    CHECK(answer.couplings[k].high - answer.couplings[k].low < grid[k].high - grid[k].low);
  }
}

TEST_CASE("surfaces without resistance fix the temperature and the bounds hold") {
  // A square annulus between its inner and outer rim at fixed temperatures.
  Problem problem;
  problem.space(20, 0.0);
  problem.space(0, 0.0);
  problem.paint(outside, -1, 2, -1, 2);
  problem.paint(problem.material(1.0), 0, 1, 0, 1);
  problem.paint(room, 0.25, 0.75, 0.25, 0.75);
  const auto grid = problem.couplings(60.0, 1);
  const Answer answer = solver::answer_of(claim_of(problem, 0.4, 1e-4));
  CHECK(answer.reached);
  // Exact by conformal mapping: 10.2340925693681... of a square in a square half as wide.
  CHECK(holds(answer.couplings.front(), 10.2340925693681, 1e-8));
  CHECK(answer.couplings.front().low <= grid.front().high);
  CHECK(answer.couplings.front().high >= grid.front().low);
}

TEST_CASE("airs that touch without resistance have no upper bound and say so") {
  Problem problem;
  problem.space(20, 0.0);
  problem.space(0, 0.0);
  problem.paint(problem.material(1.0), 0, 1, 0, 1);
  problem.paint(room, -0.1, 0, 0, 1);
  problem.paint(outside, 0, 1, 1, 1.1);
  const Answer answer = solver::answer_of(claim_of(problem, 0.4, 1e-3));
  CHECK(std::isinf(answer.couplings.front().high));
  CHECK(answer.couplings.front().low > 0.5);
}

TEST_CASE("a checkerboard keeps a true bracket however slowly it narrows") {
  const Problem problem = checkerboard(100);
  Claim claim = claim_of(problem, 0.4, 1e-3);
  claim.node_limit = 4000;
  const Answer answer = solver::answer_of(claim);
  const auto grid = problem.couplings(60.0, 1);
  CHECK(answer.couplings.front().low <= grid.front().high);
  CHECK(answer.couplings.front().high >= grid.front().low);
}

TEST_CASE("squares that touch in a point conduct nothing through it") {
  Problem problem;
  problem.space(20, 0.13);
  problem.space(0, 0.04);
  const RegionId brick = problem.material(0.8);
  problem.paint(brick, 0, 0.5, 0, 0.5);
  problem.paint(brick, 0.5, 1, 0.5, 1);
  problem.paint(room, -0.1, 0, 0, 0.5);
  problem.paint(outside, 1, 1.1, 0.5, 1);
  const Answer answer = solver::answer_of(claim_of(problem, 0.4, 1e-3));
  CHECK(answer.couplings.front().high == WithinAbs{0, 1e-12});
}

TEST_CASE("heaps of polygons have brackets that turning does not contradict") {
  const double conductivities[] = {0.035, 0.13, 0.77, 2.3, 50};
  for (std::uint64_t seed = 0; seed < 30; ++seed) {
    CAPTURE(seed);
    Problem physics;
    physics.space(20, 0.13);
    physics.space(0, seed % 5 == 0 ? 0.0 : 0.04);
    for (const double conductivity : conductivities) physics.material(conductivity);
    const geometry::Sheet heap = geometry::heap(seed, 4 + seed % 12);
    const auto couplings = [&](double angle) {
      Claim claim = claim_of(physics, 0.0, 1e-3);
      claim.sheet = geometry::turned(heap, angle);
      claim.node_limit = 5000;
      const Answer answer = solver::answer_of(claim);
      CHECK(answer.level->identity() < 1e-7);
      return answer.couplings;
    };
    const auto one = couplings(0.0), other = couplings(0.7);
    REQUIRE(one.size() == other.size());
    for (std::size_t k = 0; k < one.size(); ++k) {
      // Corners that are cut at crossings move by rounding: 1e-5 m of a metre.
      const double rounding = 2e-5 * std::max(one[k].value, other[k].value);
      CHECK(one[k].low <= other[k].high + rounding);
      CHECK(other[k].low <= one[k].high + rounding);
      CHECK(one[k].low <= one[k].high);
    }
  }
}

TEST_CASE("each of two rooms has its thermometer and its cold spot") {
  // A partition between two rooms of unlike warmth runs into an outside wall.
  Problem problem;
  problem.space(20, 0.13);
  problem.space(0, 0.04);
  const SpaceId cool = problem.space(12, 0.13);
  const RegionId brick = problem.material(0.77);
  problem.paint(outside, -0.2, 2.2, -0.2, 0);
  problem.paint(brick, 0, 2, 0, 0.3);
  problem.paint(brick, 0.9, 1.1, 0.3, 1.3);
  problem.paint(room, 0, 0.9, 0.3, 1.3);
  problem.paint(cool, 1.1, 2, 0.3, 1.3);
  Claim claim = claim_of(problem, 0.4, {}, 2e-3);
  claim.rooms = {room, cool};
  claim.spot_bands = claim.thermometer_bands = {0.04, 0.04};
  const Answer answer = solver::answer_of(claim);
  CHECK(answer.reached);
  REQUIRE(answer.thermometers.size() == 2);
  for (std::size_t r = 0; r < 2; ++r) {
    CHECK(answer.thermometers[r].high - answer.thermometers[r].low <= 0.08 + 1e-12);
    CHECK(answer.airs[r].coldest.temperature.value <= answer.thermometers[r].high);
  }
  CHECK(answer.thermometers[1].high < answer.thermometers[0].low);
}

TEST_CASE("a probe in the corner T7 agrees with the tensor grid within both bands") {
  const Problem corner = external_corner(0.300, 0.75, 0.13);
  const geometry::Point place = {0.2, 0.15};
  const auto grid = corner.solution({room}, outside, 5e-4, {}, {place});
  Claim claim = claim_of(corner, 0.4, {}, 5e-4);
  claim.probes = {geometry::turned(geometry::Outline{place}, 0.4).front()};
  const Answer answer = solver::answer_of(claim);
  CHECK(answer.reached);
  const solver::Estimate& one = grid.probes.front().temperature;
  const solver::Estimate& other = answer.probes.front().temperature;
  CHECK(std::abs(one.value - other.value) <= one.band + other.band);
  CHECK(other.band > 0.0);
}

TEST_CASE("the limit of nodes ends the refinement and the answer says so") {
  Claim claim = claim_of(external_corner(0.300, 0.75, 0.13), 0.4, 1e-9);
  claim.node_limit = 500;
  const Answer answer = solver::answer_of(claim);
  CHECK_FALSE(answer.reached);
  CHECK(holds(answer.couplings.front(), 3.72876, 5e-6));
}

/// Mean of a field over a triangle.
double mean_over(const solver::PlaceFinder& finder, const std::vector<double>& field,
                 const std::array<geometry::Point, 3>& corner) {
  constexpr int parts = 24;
  double sum = 0.0;
  int count = 0;
  for (int i = 0; i < parts; ++i) {
    for (int j = 0; i + j < parts; ++j) {
      for (const double third : {1.0 / 3, 2.0 / 3}) {  // upright and turned small triangles
        if (third > 0.5 && i + j + 1 >= parts) continue;
        const double s = (i + third) / parts, t = (j + third) / parts;
        sum += finder.value(
            field,
            finder.find(
                {corner[0].x + s * (corner[1].x - corner[0].x) + t * (corner[2].x - corner[0].x),
                 corner[0].y + s * (corner[1].y - corner[0].y) + t * (corner[2].y - corner[0].y)}));
        ++count;
      }
    }
  }
  return sum / count;
}

TEST_CASE("the mean over an element is proved by the influence of a source in it") {
  const Problem problem = external_corner(0.3, 0.8, 0.25);
  Claim claim = claim_of(problem, 0.4, std::nullopt);
  claim.node_limit = 1;
  const Answer coarse = solver::answer_of(claim);
  claim.coupling_band = 1e-6;
  claim.node_limit = 20'000;
  const Answer fine = solver::answer_of(claim);
  const solver::PlaceFinder own(coarse.triangles, coarse.level->nodes()),
      better(fine.triangles, fine.level->nodes());
  const solver::Flux gap = coarse.level->gap(claim.temperatures);
  const std::vector<double> warmth = coarse.level->warmth(claim.temperatures),
                            truth = fine.level->warmth(claim.temperatures);
  const solver::Conduction& conduction = coarse.level->conduction();
  const geometry::NodedTriangles& nodes = coarse.level->nodes();
  double before = 0.0, after = 0.0;
  for (std::uint32_t e = 0; e < nodes.elements.size(); ++e) {
    CAPTURE(e);
    const auto& node = nodes.elements[e].node;
    const std::array<geometry::Point, 3> corner{nodes.places[node[0]], nodes.places[node[1]],
                                                nodes.places[node[2]]};
    const solver::Flux influence = conduction.influence_gap(e);
    const double found = mean_over(own, warmth, corner), exact = mean_over(better, truth, corner);
    const double middle = found + conduction.product(gap, influence) / 2;
    const double half = std::sqrt(conduction.product(gap, gap)) *
                        std::sqrt(conduction.product(influence, influence)) / 2;
    CHECK(std::abs(exact - middle) <= half + 1e-5);  // of 1 K: what the finer triangles are off
    CHECK(half < 0.1);
    before = std::max(before, std::abs(exact - found));
    after = std::max(after, std::abs(exact - middle));
  }
  CHECK(after < before / 2);  // the middle is the better value, so the influence is the right one
}

}  // namespace quoin::testing
