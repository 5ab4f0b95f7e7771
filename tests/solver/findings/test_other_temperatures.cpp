// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>

#include "solver/findings/crossing.hpp"
#include "solver/findings/other_temperatures.hpp"
#include "solver/linear/errors.hpp"
#include "tests/support/within.hpp"

using namespace quoin::solver;
using quoin::testing::WithinAbs;

namespace {

const SpaceId hall(0u), yard(1u), porch(2u), loft(3u);

SpaceTemperatures stated() {
  SpaceTemperatures temperatures(4);
  temperatures[hall] = 18.0;
  temperatures[yard] = 2.0;
  return temperatures;
}

Per<SpaceId, SpaceId> own_airs() {
  Per<SpaceId, SpaceId> airs;
  for (const SpaceId id : {hall, yard, porch, loft}) airs.add(id);
  return airs;
}

TEST_CASE("an unheated space takes the temperature at which its heat balances") {
  const std::vector<Coupling> couplings{{hall, porch, 1.0, 0.9, 1.1}, {porch, yard, 0.5, 0.4, 0.6}};
  const auto found = balanced(stated(), own_airs(), {{porch, yard, 6.5}}, couplings);
  // By hand: 1.0 from 18 degC against 0.5 + 6.5 to 2 degC: (18 + 7 x 2) / 8.
  CHECK(found[porch] == WithinAbs{4.0, 1e-12});
  CHECK(found[hall] == 18.0);
  CHECK(found[yard] == 2.0);
  // Without the losses it would be warmer: they count.
  CHECK_FALSE(balanced(stated(), own_airs(), {{porch, yard, 0.0}}, couplings)[porch] ==
              WithinAbs{4.0, 1.0});
}

TEST_CASE("two unheated spaces beside each other balance together") {
  const std::vector<Coupling> couplings{{hall, porch, 1.0, 1.0, 1.0}, {porch, loft, 1.0, 1.0, 1.0}};
  const auto found =
      balanced(stated(), own_airs(), {{porch, yard, 1.0}, {loft, yard, 1.0}}, couplings);
  // By hand: 3 p - l = 20 and 2 l - p = 2.
  CHECK(found[porch] == WithinAbs{8.4, 1e-12});
  CHECK(found[loft] == WithinAbs{5.2, 1e-12});
}

TEST_CASE("a space that is like an unheated one has its temperature") {
  Per<SpaceId, SpaceId> airs = own_airs();
  airs[loft] = porch;
  const auto found = balanced(stated(), airs, {{porch, yard, 1.0}}, {{hall, porch, 1.0, 1.0, 1.0}});
  CHECK(found[loft] == found[porch]);
  CHECK(found[porch] == WithinAbs{10.0, 1e-12});
}

TEST_CASE("a space that loses heat to nothing has no balance") {
  CHECK_THROWS_AS((void)balanced(stated(), own_airs(), {{porch, yard, 0.0}}, {}), SolveError);
}

TEST_CASE("a crossing is found within its tolerance, whichever way the function runs") {
  int asked = 0;
  const auto rising = [&](double x) {
    ++asked;
    return x * x * x - 2.0;
  };
  const double root = std::cbrt(2.0);
  CHECK(crossing(rising, {0.0, -2.0}, {4.0, 62.0}, 1e-6) == WithinAbs{root, 1e-6});
  CHECK(asked <= 23);  // halving takes 21, and one more is allowed
  const auto falling = [](double x) { return 2.0 - x * x * x; };
  CHECK(crossing(falling, {0.0, 2.0}, {4.0, -62.0}, 1e-6) == WithinAbs{root, 1e-6});
}

TEST_CASE("a straight line is crossed after a few values") {
  int asked = 0;
  const auto line = [&](double x) {
    ++asked;
    return 3.0 * x - 1.0;
  };
  CHECK(crossing(line, {0.0, -1.0}, {1.0, 2.0}, 1e-4) == WithinAbs{1.0 / 3.0, 1e-4});
  CHECK(asked <= 6);  // halving takes 13
}

}  // namespace
