// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>

#include "materials/moist_air.hpp"
#include "tests/support/vapour_wall.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

/// Pressure at which the pores of a wall of one material are saturated, by the share of the way
/// from its inner surface to its outer one.
struct Saturation {
  double inner;  ///< temperatures of the surfaces, degC
  double outer;

  [[nodiscard]] double operator()(double s) const {
    return materials::saturation_pressure(inner + s * (outer - inner));
  }
  [[nodiscard]] double slope(double s) const {
    constexpr double h = 1e-5;
    return ((*this)(s + h) - (*this)(s - h)) / (2 * h);
  }
};

/// Where the tangent to the saturation pressure runs through a pressure at one surface: from there
/// to the same as seen from the other surface it condenses.
double tangent_point(const Saturation& saturation, double from, double pressure) {
  double near = from, far = 1 - from;
  for (int k = 0; k < 60; ++k) {
    const double s = (near + far) / 2;
    const double at_surface = saturation(s) + saturation.slope(s) * (from - s);
    (at_surface > pressure ? near : far) = s;
  }
  return (near + far) / 2;
}

}  // namespace

TEST_CASE("a zone of condensation within one material is that of its two tangents") {
  const double inside = 24, outside = 1, thickness = 0.2, conductivity = 0.04, factor = 3;
  const VapourWall wall({{thickness, conductivity, factor}}, inside, 0.9, outside, 0.95);
  const double resistance = 0.25 + thickness / conductivity + 0.04;
  const Saturation saturation{inside - (inside - outside) * 0.25 / resistance,
                              outside + (inside - outside) * 0.04 / resistance};
  const double p_inside = 0.9 * materials::saturation_pressure(inside);
  const double p_outside = 0.95 * materials::saturation_pressure(outside);
  const double from = tangent_point(saturation, 0.0, p_inside);
  const double to = tangent_point(saturation, 1.0, p_outside);
  REQUIRE(from < to);
  const double exact =
      solver::air_permeability / factor / thickness *
      ((p_inside - saturation(from)) / from - (saturation(to) - p_outside) / (1 - to));

  const solver::Solution solution = wall.problem.solution({SpaceId(0)}, SpaceId(1), 0.002, {});
  const solver::VapourGrids grids = solver::vapour_grids(solution, {});
  const solver::Condensation found =
      solver::condensation_at(grids, wall.problem.temperatures(), wall.physics, wall.pressures, {});
  REQUIRE(found.places.size() == 1);
  const solver::Estimate& rate = found.places.front().rate;
  CAPTURE(rate.value);
  CAPTURE(rate.band);
  CAPTURE(exact);
  CHECK(std::abs(rate.value - exact) <= rate.band);
  CHECK(rate.band <= solver::vapour_band * exact);
  // On the grid that temperatures are content with it is another matter.
  double there = 0.0;
  for (const double each : found.field.condensing) there += each;
  CHECK(std::abs(there - exact) > rate.band);
}

TEST_CASE("what condenses between layers in series is sure on the first grids") {
  const VapourWall wall({{0.1, 0.04, 1}, {0.2, 0.8, 20}}, 20, 0.6, -5, 0.8);
  const solver::Solution solution = wall.problem.solution({SpaceId(0)}, SpaceId(1), 0.002, {});
  const solver::VapourGrids grids = solver::vapour_grids(solution, {});
  const solver::Condensation found =
      solver::condensation_at(grids, wall.problem.temperatures(), wall.physics, wall.pressures, {});
  REQUIRE(found.places.size() == 1);
  double there = 0.0;
  for (const double each : found.field.condensing) there += each;
  CHECK(found.places.front().rate.value == there);
}

}  // namespace quoin::testing
