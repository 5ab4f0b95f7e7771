// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <vector>

#include "geometry/recipe.hpp"
#include "solver/solution.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

using geometry::Outline;
using geometry::Point;
using geometry::RegionId;
using geometry::Sheet;
using geometry::SpaceId;

constexpr double pi = std::numbers::pi;
const SpaceId room(0);
const SpaceId outside(1);
const RegionId wall(0);

/// A sheet turned about the origin, its corners on the raster of 0.01 mm that drawings have.
Sheet turned(Sheet sheet, double angle) {
  for (geometry::Patch& patch : sheet) {
    for (Point& corner : patch.outline) {
      const Point was = corner;
      corner = {std::round((std::cos(angle) * was.x - std::sin(angle) * was.y) * 1e5) / 1e5,
                std::round((std::sin(angle) * was.x + std::cos(angle) * was.y) * 1e5) / 1e5};
    }
  }
  return sheet;
}

/// A slab 0.3 m thick and 1 m long of conductivity 0.75.
Sheet slab() {
  return {{room, geometry::rectangle(0, 1, -0.1, 0), {}},
          {outside, geometry::rectangle(0, 1, 0.3, 0.4), {}},
          {wall, geometry::rectangle(0, 1, 0, 0.3), {}}};
}
constexpr double slab_conductance = 1 / (0.13 + 0.3 / 0.75 + 0.04);
constexpr double slab_factor = 1 - 0.13 * slab_conductance;

solver::Question question_of(geometry::Section section, double inside_resistance,
                             double outside_resistance, double conductivity) {
  solver::Question question;
  question.section = std::move(section);
  question.physics.conductivity.add(conductivity);
  question.physics.is_fabric.add(1);
  for (const double resistance : {inside_resistance, outside_resistance}) {
    geometry::Per<RegionId, std::array<double, 3>> by_region;
    by_region.add({resistance, resistance, resistance});
    question.physics.air.add(SpaceId(question.physics.air.size()));
    question.physics.resistance.add(by_region);
  }
  question.temperatures.add(1.0);
  question.temperatures.add(0.0);
  question.rooms = {room};
  question.outside = outside;
  question.factor_band = 0.002;
  question.coupling_band = 0.001;
  return question;
}

solver::Solution solved(const Sheet& sheet) {
  return solver::solution_of(question_of(geometry::section_of(sheet), 0.13, 0.04, 0.75), {});
}

bool brackets(const solver::Coupling& coupling, double truth) {
  // 1e-5: corners rounded to 0.01 mm change a slab of 0.3 m by a part of 3e-5 at the most.
  return coupling.low <= truth * (1 + 3e-5) && truth * (1 - 3e-5) <= coupling.high;
}

double factor_error(const solver::Solution& solution, double truth) {
  return std::abs(solution.airs.front().coldest.factor.value - truth);
}

}  // namespace

TEST_CASE(
    "a slab turned by 45 degrees conducts as the upright one, to the rounding of its corners") {
  const solver::Solution solution = solved(turned(slab(), pi / 4));
  CHECK(solution.field.mesh.section.deviation == 0.0);
  CHECK(solution.couplings.front().value == WithinRel{slab_conductance, 3e-5});
  CHECK(factor_error(solution, slab_factor) < 1e-4);  // rounded corners
}

/// A slab 0.3 m thick, its faces along (4, 3) and its ends along (-3, 4), as long as is said. Lines
/// through its corners run from face to face and along it in steps of 0.5 m x 0.375 m: a length of
/// 0.625 m or 1.25 m ends where the lines through the other end arrive, so they close.
Sheet slab_by_3_4_5(double length) {
  const Point end = {0.8 * length, 0.6 * length};
  const Point across = {-0.18, 0.24};
  const Point far = {end.x + across.x, end.y + across.y};
  return {{room, {{0, 0}, {end.x, 0}, end}, {}},
          {outside, {across, far, {across.x, far.y}}, {}},
          {wall, {{0, 0}, end, far, across}, {}}};
}

TEST_CASE("a slab turned by the angle of 3, 4, 5 is solved exactly where its lines close") {
  for (const double length : {0.625, 1.25}) {
    const solver::Solution solution = solved(slab_by_3_4_5(length));
    CHECK(solution.field.mesh.section.deviation == 0.0);
    // To the rounding of a linear solve: temperatures of a slab are linear, as the elements are.
    CHECK(solution.couplings.front().high == WithinRel{slab_conductance * length, 1e-11});
    CHECK(factor_error(solution, slab_factor) < 1e-11);
  }
}

TEST_CASE("a slab of 3, 4, 5 whose lines do not close is followed in steps, which its bands hold") {
  const solver::Solution solution = solved(slab_by_3_4_5(1.0));
  CHECK(solution.field.mesh.section.deviation > 1e-4);
  const solver::Coupling& coupling = solution.couplings.front();
  CHECK(std::abs(coupling.high / slab_conductance - 1) > 1e-7);
  CHECK(brackets(coupling, slab_conductance));
  const solver::Estimate& factor = solution.airs.front().coldest.factor;
  CHECK(factor_error(solution, slab_factor) <= factor.band);
}

TEST_CASE("a slab turned by any angle conducts as the upright one, within the stated bands") {
  for (const double degrees : {36.869897645844, 5.0, 20.0, 61.0, 78.0, 110.0, 200.0}) {
    CAPTURE(degrees);
    const solver::Solution solution = solved(turned(slab(), degrees * pi / 180));
    const solver::Coupling& coupling = solution.couplings.front();
    CHECK(brackets(coupling, slab_conductance));
    CHECK((coupling.high - coupling.low) / 2 < 0.01 * slab_conductance);
    CHECK(coupling.value == WithinRel{slab_conductance, 2e-3});  // steps of up to 6 mm in 300
    const solver::Estimate& factor = solution.airs.front().coldest.factor;
    CHECK(factor_error(solution, slab_factor) <= factor.band);
    CHECK(factor.band < 0.025);
  }
}

TEST_CASE("without their true length the stepped surfaces conduct too much: the bands miss") {
  geometry::Section section = geometry::section_of(turned(slab(), 20 * pi / 180));
  REQUIRE(section.deviation > 1e-3);
  REQUIRE_FALSE(section.lengthening.empty());
  const auto with_lengths = solver::solution_of(question_of(section, 0.13, 0.04, 0.75), {});
  for (auto& [stretch, factor] : section.lengthening) factor = 1.0;
  const auto as_stepped = solver::solution_of(question_of(section, 0.13, 0.04, 0.75), {});
  CHECK(brackets(with_lengths.couplings.front(), slab_conductance));
  CHECK_FALSE(brackets(as_stepped.couplings.front(), slab_conductance));
}

TEST_CASE("a turned external corner equals the upright one within both their bands") {
  geometry::Corner corner;
  corner.layers = {{wall, 0.3}};
  corner.inside = room;
  corner.outside = outside;
  const Sheet upright = geometry::drawing_of(corner).sheet;
  const solver::Solution reference = solved(upright);
  for (const double degrees : {45.0, 30.0}) {
    CAPTURE(degrees);
    const solver::Solution solution = solved(turned(upright, degrees * pi / 180));
    const solver::Coupling& coupling = solution.couplings.front();
    CHECK(coupling.low <= reference.couplings.front().high);
    CHECK(reference.couplings.front().low <= coupling.high);
    const solver::Estimate& factor = solution.airs.front().coldest.factor;
    const solver::Estimate& truth = reference.airs.front().coldest.factor;
    CHECK(std::abs(factor.value - truth.value) <= factor.band + truth.band);
  }
}

TEST_CASE("a quarter ring of 64-gons has the shape factor of the ring within its bracket") {
  // Source: exact, S = (pi / 2) / ln(r2 / r1); the polygon's own is 0.2 % less thick at most.
  const double inner = 0.2, outer = 0.4;
  const auto arc = [](double radius) {
    Outline outline;
    for (int k = 0; k <= 16; ++k) {
      const double angle = k == 16 ? pi / 2 : pi / 2 * k / 16;
      outline.push_back({std::round(radius * std::cos(angle) * 1e5) / 1e5,
                         std::round(radius * std::sin(angle) * 1e5) / 1e5});
    }
    outline.push_back({0, 0});
    return outline;
  };
  const Sheet sheet = {{outside, geometry::rectangle(0, 0.5, 0, 0.5), {}},
                       {wall, arc(outer), {}},
                       {room, arc(inner), {}}};
  const auto solution =
      solver::solution_of(question_of(geometry::section_of(sheet), 0.0, 0.0, 1.0), {});
  CHECK(brackets(solution.couplings.front(), pi / 2 / std::log(outer / inner)));
  const solver::Coupling& coupling = solution.couplings.front();
  CHECK((coupling.high - coupling.low) / 2 < 0.005 * coupling.value);
}

TEST_CASE("a splay and its lining run through the corners of cells exactly") {
  geometry::Reveal reveal;
  reveal.layers = {{wall, 0.327}};
  reveal.lining = {{wall, 0.015}};
  reveal.frame = wall;
  reveal.splay = 0.09;
  reveal.inside = room;
  reveal.outside = outside;
  const geometry::Section section = geometry::section_of(geometry::drawing_of(reveal).sheet);
  CHECK(section.deviation == 0.0);
  CHECK(section.lengthening.empty());
}

}  // namespace quoin::testing
