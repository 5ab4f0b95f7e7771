// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <limits>
#include <sstream>

#include "tests/support/within.hpp"

using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

constexpr double nan = std::numeric_limits<double>::quiet_NaN();
constexpr double inf = std::numeric_limits<double>::infinity();

// All numbers below are exact in binary, so that a value on the bound is on it to the bit.

TEST_CASE("an absolute bound takes values up to and on the bound") {
  CHECK(10.0 == WithinAbs{10.0, 0.0});
  CHECK(10.25 == WithinAbs{10.0, 0.25});
  CHECK(9.75 == WithinAbs{10.0, 0.25});
  CHECK(WithinAbs{10.0, 0.25} == 10.25);
}

TEST_CASE("an absolute bound refuses values beyond it") {
  CHECK_FALSE(10.0 + 0.2500001 == WithinAbs{10.0, 0.25});
  CHECK_FALSE(9.5 == WithinAbs{10.0, 0.25});
  CHECK(9.5 != WithinAbs{10.0, 0.25});
  CHECK_FALSE(0.06001 == WithinAbs{0.06, 1e-6});
}

TEST_CASE("a relative bound scales with the size of the target") {
  CHECK(-96.0 == WithinRel{-128.0, 0.25});
  CHECK(-160.0 == WithinRel{-128.0, 0.25});
  CHECK_FALSE(-95.0 == WithinRel{-128.0, 0.25});
  CHECK_FALSE(0.7 == WithinRel{1.0, 0.25});
  CHECK(0.0 == WithinRel{0.0, 0.25});
  CHECK_FALSE(1e-300 == WithinRel{0.0, 0.25});
}

TEST_CASE("nothing is within any bound of not-a-number") {
  CHECK_FALSE(nan == WithinAbs{nan, inf});
  CHECK_FALSE(nan == WithinAbs{0.0, inf});
  CHECK_FALSE(0.0 == WithinAbs{nan, 1.0});
  CHECK_FALSE(nan == WithinRel{1.0, 1.0});
}

TEST_CASE("an infinity is within a bound of itself only") {
  CHECK(inf == WithinAbs{inf, 0.0});
  CHECK_FALSE(-inf == WithinAbs{inf, 1.0});
  CHECK_FALSE(1e308 == WithinAbs{inf, 1.0});
}

TEST_CASE("a failed comparison shows target and bound") {
  std::ostringstream text;
  text << WithinAbs{9.491, 0.02} << "; " << WithinRel{0.62146, 1e-4} << "; " << 1.0 / 3.0;
  CHECK(text.str() == "9.491 +/- 0.02; 0.62146 +/- 0.0001 of it; 0.333333");
}

}  // namespace
