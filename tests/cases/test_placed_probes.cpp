// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <fmt/format.h>

#include <string>

#include "cases/read.hpp"
#include "tests/support/within.hpp"

namespace quoin::cases {
namespace {

using testing::WithinAbs;

/// A corner of 330 mm with 15 mm of plaster: its angle lies at 345, 345.
Variant corner_with(const std::string& probe, const std::string& lining = "") {
  return case_of(fmt::format(R"(quoin: 1
title: A corner
spaces:
  hall: {{is: inside, temperature: 18, humidity: 62}}
  yard: {{is: outside, temperature: 1}}
section:
  corner:
    layers: [{}{{material: lime plaster, thickness: 15}}, {{material: common brick, thickness: 330}}]
probes: {{A: {}}}
)",
                             lining, probe),
                 "corner.yaml")
      .variants.front();
}

geometry::Point place_of(const std::string& probe, const std::string& lining = "") {
  return corner_with(probe, lining).probes.at(0).place;
}

}  // namespace

TEST_CASE("a probe lies so far along the surface from a named place, left or right of it") {
  const geometry::Point left = place_of("{on: inside, from: the angle, at: 250, leg: left}");
  const geometry::Point right = place_of("{on: hall, from: angle, at: 250, leg: right}");
  // Who looks into the angle from the room has the wall along x on one hand, that along y on the
  // other: the walls stand below and left of the room on the sheet.
  CHECK(left.x == WithinAbs{0.345 + 0.250, 1e-9});
  CHECK(left.y == WithinAbs{0.345, 1e-9});
  CHECK(right.x == WithinAbs{0.345, 1e-9});
  CHECK(right.y == WithinAbs{0.345 + 0.250, 1e-9});
  const geometry::Point angle = place_of("{on: inside, from: the angle, at: 0}");
  CHECK(angle.x == WithinAbs{0.345, 1e-9});
  CHECK(angle.y == WithinAbs{0.345, 1e-9});
}

TEST_CASE("a probe on a surface moves with it where a lining is added") {
  const std::string probe = "{on: inside, from: the angle, at: 250, leg: right}";
  const std::string lining = "{material: wood fibre board, thickness: 40}, ";
  CHECK(place_of(probe, lining).x == WithinAbs{0.385, 1e-9});
  CHECK(place_of(probe, lining).y == WithinAbs{0.385 + 0.250, 1e-9});
  CHECK(place_of("[345, 595]", lining).x == WithinAbs{0.345, 1e-9});  // the twin: within the wall
}

TEST_CASE("a probe that may lie on either leg says which was taken") {
  const Variant either = corner_with("{on: inside, from: the angle, at: 250}");
  REQUIRE(either.remarks.size() == 1);
  CHECK(either.remarks[0].text.find("`leg: right`") != std::string::npos);
  CHECK(corner_with("{on: inside, from: the angle, at: 250, leg: right}").remarks.empty());
}

}  // namespace quoin::cases
