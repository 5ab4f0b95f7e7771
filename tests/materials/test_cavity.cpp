// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "materials/cavity.hpp"
#include "materials/material.hpp"
#include "tests/support/within.hpp"

using namespace quoin::materials;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

using enum Cavity::Ventilation;
using enum Cavity::Flow;

/// Of an upright rectangle.
double conductivity(Cavity cavity, double width, double height) {
  return cavity_conductivity(cavity, width * height, width, height);
}

}  // namespace

TEST_CASE("the three cavities of a wood frame have the conductivities of the formula") {
  // Source: the cavities of EN ISO 10077-2 example D.4 (memory), their values calculated from the
  // formula by hand; given to the last digit shown.
  CHECK(conductivity({unventilated, along_y}, 0.006, 0.054) == WithinAbs{0.20503, 6e-6});
  CHECK(conductivity({unventilated, along_y}, 0.005, 0.034) == WithinAbs{0.13037, 6e-6});
  CHECK(conductivity({slightly_ventilated, along_y}, 0.005, 0.018) == WithinAbs{0.14283, 6e-6});
}

TEST_CASE("a slit to the outside doubles what a cavity conducts") {
  CHECK(conductivity({slightly_ventilated, along_x}, 0.02, 0.03) ==
        2 * conductivity({unventilated, along_x}, 0.02, 0.03));
}

TEST_CASE("a cavity turned with its heat flow conducts the same, turned without it another value") {
  const double along = conductivity({unventilated, along_x}, 0.03, 0.01);
  CHECK(conductivity({unventilated, along_y}, 0.01, 0.03) == along);
  // A tenth: the depth along the flow is three times the other.
  CHECK_FALSE(conductivity({unventilated, along_y}, 0.03, 0.01) == WithinRel{along, 0.1});
}

TEST_CASE("in cavities narrower than 5 mm the air stands still, from 5 mm on it turns over") {
  // 50 mm deep: 0.025 / d is 0.5, convection 1.57 W/(m2K).
  const double step = conductivity({unventilated, along_y}, 0.005, 0.05) -
                      conductivity({unventilated, along_y}, 0.00499, 0.05);
  CHECK(step == WithinAbs{0.05 * (1.57 - 0.5), 1e-3});  // radiation hardly differs
  // As drawn at 90 to 95 mm, whose difference in binary is not exactly 5 mm.
  CHECK(conductivity({unventilated, along_y}, 0.095 - 0.09, 0.05) ==
        WithinRel{conductivity({unventilated, along_y}, 0.005, 0.05), 1e-12});
  CHECK(conductivity({unventilated, along_y}, 0.1 - 0.095, 0.05) ==
        WithinRel{conductivity({unventilated, along_y}, 0.005, 0.05), 1e-12});
}

TEST_CASE("a shallow cavity conducts like still air and radiates like two planes") {
  // d = 1 mm, b = 1 m: ha = 25, hr = 2.11 (2 - d/b) to the first order.
  CHECK(conductivity({unventilated, along_y}, 1.0, 0.001) ==
        WithinRel{0.001 * (25 + 2.11 * 1.999), 1e-6});
}

TEST_CASE("a cavity of any shape counts as the rectangle of its area and side ratio") {
  // Half the area at the same extent: both sides shrink by the root of two.
  const double half = cavity_conductivity({unventilated, along_y}, 0.02 * 0.04 / 2, 0.02, 0.04);
  const double root = 1.4142135623730951;
  CHECK(half == WithinRel{conductivity({unventilated, along_y}, 0.02 / root, 0.04 / root), 1e-12});
  CHECK_FALSE(half == WithinRel{conductivity({unventilated, along_y}, 0.02, 0.04), 0.1});
}

TEST_CASE("the air of a cavity is part of a frame and conducts as still air until it has a shape") {
  const Material air = cavity_air({slightly_ventilated, along_x});
  CHECK(air.part == Part::frame);
  CHECK(air.conductivity.value == 0.025);
  CHECK_FALSE(air.conductivity.source.empty());
  REQUIRE(air.cavity);
  CHECK(air.cavity->ventilation == slightly_ventilated);
  CHECK(air.cavity->flow == along_x);
}
