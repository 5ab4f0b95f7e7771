// SPDX-License-Identifier: Apache-2.0
#include "materials/cavity.hpp"

#include <algorithm>
#include <cmath>

#include "materials/material.hpp"

namespace quoin::materials {
namespace {

constexpr double still_air = 0.025;  // W/(m K)
/// Across narrower cavities air does not turn over, m.
constexpr double least_for_convection = 0.005;
constexpr double convection = 1.57;  // W/(m2K): 0.73 times the cube root of 10 K
constexpr double radiation = 2.11;   // W/(m2K)
constexpr double rounding = 1e-9;    // of drawn lengths, m

}  // namespace

double cavity_conductivity(Cavity cavity, double area, double width, double height) {
  const double across_to_along =
      cavity.flow == Cavity::Flow::along_y ? width / height : height / width;
  const double d = std::sqrt(area / across_to_along);  // along the heat flow
  const double b = std::sqrt(area * across_to_along);  // across it
  const double ha =
      b < least_for_convection - rounding ? still_air / d : std::max(still_air / d, convection);
  const double hr = radiation * (1.0 + std::sqrt(1.0 + (d / b) * (d / b)) - d / b);
  const double unventilated = d * (ha + hr);
  return cavity.ventilation == Cavity::Ventilation::unventilated ? unventilated : 2 * unventilated;
}

Material cavity_air(Cavity cavity) {
  Material air;
  air.about = "air in a hollow of a frame";
  air.conductivity = {still_air, Confidence::memory, "EN ISO 10077-2", {}, {}};
  air.density = {1.23, Confidence::memory, "EN ISO 10456", {}, {}};
  air.law_confidence = Confidence::memory;
  air.law_source = "EN ISO 10077-2";
  air.part = Part::frame;
  air.cavity = cavity;
  return air;
}

}  // namespace quoin::materials
