// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <limits>

#include "solver/accuracy/estimate.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

/// A quantity on a grid of step h where one scheme errs by +error h^2 and the other by as much the
/// other way but for `skew` of it.
TwoSided on_grid(double truth, double error, double skew, double h) {
  const double by_nodes = truth + error * h * h;
  return {by_nodes, -(1 - skew) * error * h * h, std::abs(error) * h * h};
}

Estimate from_grids(double truth, double error, double skew) {
  return estimate_of(on_grid(truth, error, skew, 1), on_grid(truth, error, skew, 0.5));
}

bool covers(const Estimate& estimate, double truth) {
  return std::abs(estimate.value - truth) <= estimate.band;
}

}  // namespace

TEST_CASE("two schemes that err alike to both sides give a band a little wider than the error") {
  for (const double error : {0.3, -0.02}) {
    CAPTURE(error);
    const Estimate estimate = from_grids(12.6, error, 0.0);
    CHECK(estimate.asymptotic);
    CHECK(covers(estimate, 12.6));
    CHECK(estimate.value == 12.6 + error / 4);  // the finer grid's own
    // Beyond the error of the nodes only the share of the gap that is always granted.
    CHECK(estimate.band == WithinAbs{1.2 * std::abs(error) / 4, 2e-8});  // rounding granted
  }
}

TEST_CASE("where the middle itself is off the step between the grids covers it") {
  for (const double skew : {0.1, -0.1, 0.5, 0.9}) {
    CAPTURE(skew);
    CHECK(covers(from_grids(12.6, 0.3, skew), 12.6));
  }
}

TEST_CASE("no coarser grid makes a band narrower than the finer grid alone says it is at least") {
  for (const double skew : {0.0, 0.1, -0.5, 0.9}) {
    const TwoSided fine = on_grid(12.6, 0.3, skew, 0.5);
    for (const double coarse : {0.7, 1.0, 2.0}) {
      CAPTURE(skew);
      CAPTURE(coarse);
      const double band = estimate_of(on_grid(12.6, 0.3, skew, coarse), fine).band;
      CHECK(least_band(fine) <= band);
    }
    // And one that says much the same leaves it there, but for rounding.
    CHECK(estimate_of(fine, fine).band == WithinAbs{least_band(fine), 2e-8});
    CHECK(estimate_of(on_grid(12.6, 0.3, 0.9, 2.0), fine).band > 1.01 * least_band(fine));
  }
}

TEST_CASE("a correction to the wrong side is covered by the step between the grids") {
  CHECK(covers(from_grids(12.6, 0.3, 2.0), 12.6));
}

TEST_CASE("a gap that does not shrink is not asymptotic") {
  const TwoSided coarse{10.0, 0.1, 0.2};
  CHECK_FALSE(estimate_of(coarse, {10.1, 0.05, 0.19}).asymptotic);
  CHECK(estimate_of(coarse, {10.1, 0.05, 0.1}).asymptotic);
}

TEST_CASE("a coincidence of the middles of two grids does not make a number certain") {
  const Estimate estimate = estimate_of({10.0, 0.2, 1.0}, {10.1, 0.1, 0.5});
  CHECK(estimate.band >= 0.1 + 0.2 * 0.5);
}

TEST_CASE("what the gap does not see of a place is in its band whole") {
  const Estimate without = estimate_of({10.0, 0.2, 1.0}, {10.1, 0.1, 0.5});
  const Estimate with = estimate_of({10.0, 0.2, 1.0}, {10.1, 0.1, 0.5, 0.04});
  CHECK(with.value == without.value);
  CHECK(with.band == WithinRel{without.band + 0.04, 1e-12});
}

TEST_CASE("grids that agree to rounding give their value, certain to rounding") {
  const Estimate estimate = estimate_of({14.94, 1e-13, 1e-12}, {14.94 + 1e-12, -1e-13, 1e-12});
  CHECK(estimate.asymptotic);
  CHECK(estimate.value == WithinAbs{14.94, 1e-11});
  CHECK(estimate.band < 1e-7);
}

TEST_CASE("a number that is not one stays so") {
  const double nan = std::numeric_limits<double>::quiet_NaN();
  const Estimate estimate = estimate_of({nan, 0, 0}, {nan, 0, 0});
  CHECK(std::isnan(estimate.value));
}

TEST_CASE("an estimate in other units keeps its band positive") {
  const Estimate factor = scaled({12.0, 0.2, false}, -0.05, 1.0);
  CHECK(factor.value == WithinAbs{0.4, 1e-15});
  CHECK(factor.band == WithinAbs{0.01, 1e-15});
  CHECK_FALSE(factor.asymptotic);
}

}  // namespace quoin::solver
