// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <numbers>
#include <stdexcept>
#include <vector>

#include "geometry/recipe.hpp"
#include "solver/findings/courses.hpp"
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

solver::Question question_of(const Sheet& sheet, double inside_resistance,
                             double outside_resistance, double conductivity) {
  solver::Question question;
  question.section = geometry::section_of(sheet);
  question.sheet = sheet;
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
  return solver::solution_of(question_of(sheet, 0.13, 0.04, 0.75), {});
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

TEST_CASE("a slab of 3, 4, 5 whose lines do not close is followed exactly by triangles") {
  const solver::Solution solution = solved(slab_by_3_4_5(1.0));
  CHECK(solution.field.mesh.section.deviation > 1e-4);
  CHECK(solution.triangles.has_value());
  CHECK(solution.couplings.front().value == WithinRel{slab_conductance, 1e-9});
  CHECK(factor_error(solution, slab_factor) < 1e-9);
  CHECK_FALSE(solved(slab_by_3_4_5(0.625)).triangles.has_value());  // there the grid is exact
}

TEST_CASE("a slab turned by any angle conducts as the upright one") {
  for (const double degrees : {36.869897645844, 5.0, 20.0, 61.0, 78.0, 110.0, 200.0}) {
    CAPTURE(degrees);
    const solver::Solution solution = solved(turned(slab(), degrees * pi / 180));
    const solver::Coupling& coupling = solution.couplings.front();
    CHECK(brackets(coupling, slab_conductance));
    CHECK(coupling.value == WithinRel{slab_conductance, 3e-5});  // rounded corners
    CHECK((coupling.high - coupling.low) / 2 < 1e-3 * slab_conductance);
    const solver::AirSurface& surface = solution.airs.front();
    CHECK(factor_error(solution, slab_factor) < 1e-4);
    CHECK(surface.coldest.factor.band <= 0.002);
    REQUIRE(surface.thermometer.has_value());
    CHECK(surface.thermometer->low <= slab_factor + 1e-4);
    CHECK(surface.thermometer->high >= slab_factor - 1e-4);
    CHECK(solution.accurate);
  }
}

TEST_CASE("a probe in a turned slab has the temperature of the upright one") {
  const double angle = 20 * pi / 180;
  const Sheet sheet = turned(slab(), angle);
  solver::Question question = question_of(sheet, 0.13, 0.04, 0.75);
  // 0.1 m deep and 0.4 m along.
  question.probes = {{0.4 * std::cos(angle) - 0.1 * std::sin(angle),
                      0.4 * std::sin(angle) + 0.1 * std::cos(angle)}};
  const solver::Solution solution = solver::solution_of(question, {});
  const double truth = 1 - (0.13 + 0.1 / 0.75) * slab_conductance;
  const solver::Estimate& found = solution.probes.front().temperature;
  CHECK(found.value == WithinAbs{truth, 1e-4});  // rounded corners
  CHECK(found.band <= 0.002);
}

TEST_CASE("what is read along a turned surface lies on it and is as warm everywhere") {
  const double angle = 20 * pi / 180;
  const solver::Solution solution = solved(turned(slab(), angle));
  std::size_t read = 0;
  for (const solver::Course& course : solver::courses_of(solution)) {
    for (std::size_t k = 0; k < course.place.size(); ++k) {
      const geometry::Point place = course.place[k];
      const double depth = -std::sin(angle) * place.x + std::cos(angle) * place.y;
      CHECK(depth == WithinAbs{course.surface.air == room ? 0.0 : 0.3, 2e-5});
      const double truth = course.surface.air == room ? slab_factor : 0.04 * slab_conductance;
      CHECK(course.temperature[k] == WithinAbs{truth, 1e-4});
      ++read;
    }
  }
  CHECK(read >= 6);
}

TEST_CASE("the grid that pictures walk over shows the field of the triangles") {
  const double angle = 20 * pi / 180;
  const solver::Solution solution = solved(turned(slab(), angle));
  const geometry::Mesh& mesh = solution.field.mesh;
  const double step = solution.field.mesh.section.deviation;
  double worst = 0.0;
  for (std::size_t n = 0; n < mesh.nx() * mesh.ny(); ++n) {
    if (solution.field.solid[n] == 0) continue;
    const geometry::Point place = mesh.place(n);
    const double depth = -std::sin(angle) * place.x + std::cos(angle) * place.y;
    const double truth = 1 - (0.13 + std::clamp(depth, 0.0, 0.3) / 0.75) * slab_conductance;
    worst = std::max(worst, std::abs(solution.temperature[n] - truth));
  }
  CHECK(worst < 1e-4 + 2 * step / 0.75 * slab_conductance);
}

TEST_CASE("without its sheet a section in steps is refused") {
  solver::Question question = question_of(turned(slab(), 0.3), 0.13, 0.04, 0.75);
  question.sheet.clear();
  CHECK_THROWS_AS(solver::solution_of(question, {}), std::invalid_argument);
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
  const auto solution = solver::solution_of(question_of(sheet, 0.0, 0.0, 1.0), {});
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
