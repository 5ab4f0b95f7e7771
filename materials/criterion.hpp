// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>
#include <variant>

#include "materials/criteria/critical_humidity.hpp"
#include "materials/criteria/factor_threshold.hpp"
#include "materials/criteria/surface_humidity_limit.hpp"

namespace quoin::materials {

/// Every test a criterion can make. A new one is one file in criteria/ and one line here.
using Test = std::variant<SurfaceHumidityLimit, CriticalHumidity, FactorThreshold>;

/// Whether the test asks for the humidity of the air inside.
[[nodiscard]] inline bool needs_humidity(const Test& test) {
  return std::visit([](const auto& one) { return one.needs_humidity; }, test);
}

/// The unit of the margin.
[[nodiscard]] inline std::string_view unit_of(const Test& test) {
  return std::visit([](const auto& one) { return one.unit; }, test);
}

/// How far a place is on the safe side, in the unit of the test.
[[nodiscard]] inline double margin(const Test& test, const Place& place) {
  return std::visit([&](const auto& one) { return margin(one, place); }, test);
}

/// The temperature, degC, at which a surface just passes, for a vapour pressure, Pa, of the air.
[[nodiscard]] inline double lowest_temperature(const Test& test, double vapour_pressure,
                                               const Sides& sides) {
  return std::visit(
      [&](const auto& one) { return lowest_temperature(one, vapour_pressure, sides); }, test);
}

/// The vapour pressure, Pa, up to which a surface of this temperature, degC, passes; infinite where
/// the test does not look at it.
[[nodiscard]] inline double highest_pressure(const Test& test, double surface_temperature) {
  return std::visit([&](const auto& one) { return highest_pressure(one, surface_temperature); },
                    test);
}

}  // namespace quoin::materials
