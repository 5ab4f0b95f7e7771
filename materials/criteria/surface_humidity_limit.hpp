// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

#include "materials/criteria/place.hpp"
#include "materials/moist_air.hpp"

namespace quoin::materials {

/// The humidity at an inside surface must not exceed this limit.
/// Source: ISO 13788 (memory): 0.8 for mould, 1 for condensation, means of a month.
struct SurfaceHumidityLimit {
  static constexpr std::string_view name = "surface humidity";
  static constexpr std::string_view about =
      "the humidity at an inside surface must not exceed this";
  static constexpr std::string_view alone = "limit";
  static constexpr bool needs_humidity = true;
  static constexpr std::string_view unit = "%RH";

  double limit = 0.8;  ///< relative, 0 to 1
};

template <class Visitor>
void describe(Visitor& visit, SurfaceHumidityLimit& test) {
  visit.humidity("limit", test.limit, 0.3, 1.0, "80 for mould, 100 for condensation");
}

/// How far a place is on the safe side, in points of humidity.
[[nodiscard]] inline double margin(const SurfaceHumidityLimit& test, const Place& place) {
  return 100.0 * (test.limit - place.vapour_pressure / saturation_pressure(place.temperature));
}

/// The temperature, degC, at which a surface just passes.
[[nodiscard]] inline double lowest_temperature(const SurfaceHumidityLimit& test,
                                               double vapour_pressure, const Sides& /*sides*/) {
  return saturation_temperature(vapour_pressure / test.limit);
}

/// The vapour pressure, Pa, up to which a surface of this temperature passes.
[[nodiscard]] inline double highest_pressure(const SurfaceHumidityLimit& test,
                                             double surface_temperature) {
  return test.limit * saturation_pressure(surface_temperature);
}

}  // namespace quoin::materials
