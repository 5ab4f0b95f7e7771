// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

#include "solver/estimate.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

/// The estimate from truth + error * h^order on grids h = 1, 1/2, 1/4.
Estimate from_order(double truth, double error, double order) {
  const auto at = [&](int k) { return truth + error * std::pow(0.5, k * order); };
  return estimate_of(at(0), at(1), at(2));
}

bool covers(const Estimate& estimate, double truth) {
  return std::abs(estimate.value - truth) <= estimate.band;
}

}  // namespace

TEST_CASE("a sequence of a steady order has its limit within the band and leads to it") {
  for (const double order : {0.5, 1.0, 4.0 / 3.0, 2.0}) {
    for (const double error : {0.3, -0.02}) {
      CAPTURE(order);
      const Estimate estimate = from_order(12.6, error, order);
      CHECK(estimate.asymptotic);
      CHECK(covers(estimate, 12.6));
      const double left = std::abs(error) * std::pow(0.25, order);
      CHECK(std::abs(estimate.value - 12.6) == WithinAbs{left, 1e-12});  // the finest grid's
      // At most three times what is left: the last step at second order. 2e-8 are always granted.
      CHECK(estimate.band <= 3 * left + 2e-8);
      const auto at = [&](int k) { return 12.6 + error * std::pow(0.5, k * order); };
      CHECK(limit_of(at(0), at(1), at(2)) == WithinAbs{12.6, 1e-9});  // rounding over 2^p - 1
    }
  }
}

TEST_CASE("an order above two is not believed") {
  const Estimate estimate = from_order(10, 0.64, 3);  // steps -0.56, -0.07
  CHECK(estimate.asymptotic);
  CHECK(estimate.band == WithinRel{0.07, 1e-6});
  CHECK(covers(estimate, 10));
}

TEST_CASE("steps that grow or hardly shrink are not asymptotic, their band twice the larger step") {
  for (const auto& [coarse, medium, fine] :
       {std::array{10.0, 10.1, 10.3}, std::array{10.0, 10.2, 10.4},
        std::array{10.0, 10.2, 10.39}}) {
    const Estimate estimate = estimate_of(coarse, medium, fine);
    CHECK_FALSE(estimate.asymptotic);
    CHECK(estimate.value == fine);
    const double larger = std::max(medium - coarse, fine - medium);
    CHECK(estimate.band == WithinRel{2 * larger, 1e-6});
  }
}

TEST_CASE("steps that change their sign are not asymptotic") {
  const Estimate estimate = estimate_of(10.0, 10.2, 10.15);
  CHECK_FALSE(estimate.asymptotic);
  CHECK(estimate.band >= 0.4);
}

TEST_CASE("a coincidence of two grids does not make a number certain") {
  CHECK(estimate_of(10.0, 10.0, 10.1).band >= 0.2);
  CHECK(estimate_of(10.0, 10.1, 10.1).band >= 0.1);
}

TEST_CASE("grids that agree to rounding give their value, certain to rounding") {
  const Estimate estimate = estimate_of(14.94, 14.94 + 1e-12, 14.94 - 1e-12);
  CHECK(estimate.asymptotic);
  CHECK(estimate.value == WithinAbs{14.94, 1e-11});
  CHECK(estimate.band < 1e-6);
  CHECK(estimate_of(0, 0, 0).band < 1e-9);
}

TEST_CASE("two orders at once are still covered") {
  // A corner's 4/3 and the scheme's 2, of opposite sign and equal size.
  for (const double mix : {-0.5, -0.3, 0.3, 1.0, 3.0}) {
    CAPTURE(mix);
    const auto at = [&](int k) {
      return 5 + 0.1 * (std::pow(0.5, k * 4.0 / 3) + mix * std::pow(0.5, k * 2.0));
    };
    CHECK(covers(estimate_of(at(0), at(1), at(2)), 5.0));
  }
}

TEST_CASE("an estimate never claims a number that is not one") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  CHECK(std::isnan(estimate_of(nan, 1, 1).value + estimate_of(nan, 1, 1).band));
}

TEST_CASE("a change of units scales the band by its size and shifts the value alone") {
  const Estimate factor = scaled({10.0, 0.2, false}, -0.05, 1.0);
  CHECK(factor.value == WithinAbs{0.5, 1e-15});
  CHECK(factor.band == WithinAbs{0.01, 1e-15});
  CHECK_FALSE(factor.asymptotic);
}

}  // namespace quoin::solver
