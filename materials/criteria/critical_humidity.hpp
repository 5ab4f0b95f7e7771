// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string_view>

#include "materials/criteria/place.hpp"
#include "materials/moist_air.hpp"

namespace quoin::materials {

/// The humidity at an inside surface must not exceed that above which mould starts to grow at the
/// temperature of the surface: the colder, the more it takes.
/// Source: that of critical_mould_humidity.
struct CriticalHumidity {
  enum class Curve { by_temperature };

  static constexpr std::string_view name = "critical humidity";
  static constexpr std::string_view about =
      "the humidity at an inside surface must not exceed that above which mould starts at the "
      "temperature of the surface";
  static constexpr std::string_view alone = "curve";
  static constexpr bool needs_humidity = true;
  static constexpr std::string_view unit = "%RH";

  Curve curve = Curve::by_temperature;
};

template <class Visitor>
void describe(Visitor& visit, CriticalHumidity& test) {
  visit.choice("curve", test.curve, {{"by temperature", CriticalHumidity::Curve::by_temperature}},
               "80 % when warm, more when cold (correlation of 1999)");
}

/// How far a place is on the safe side, in points of humidity.
[[nodiscard]] inline double margin(const CriticalHumidity& /*test*/, const Place& place) {
  return 100.0 * (critical_mould_humidity(place.temperature) -
                  place.vapour_pressure / saturation_pressure(place.temperature));
}

/// The vapour pressure, Pa, up to which a surface of this temperature passes.
[[nodiscard]] inline double highest_pressure(const CriticalHumidity& /*test*/,
                                             double surface_temperature) {
  return critical_mould_humidity(surface_temperature) * saturation_pressure(surface_temperature);
}

/// The temperature, degC, at which a surface just passes: between those of 100 % and of 80 %,
/// halved down to rounding, as the pressure a surface can stand only grows with its temperature.
[[nodiscard]] inline double lowest_temperature(const CriticalHumidity& test, double vapour_pressure,
                                               const Sides& /*sides*/) {
  double fails = saturation_temperature(vapour_pressure);
  double passes = saturation_temperature(vapour_pressure / 0.79);  // the curve dips below 0.80
  for (int halving = 0; halving < 60; ++halving) {
    const double middle = (fails + passes) / 2.0;
    (highest_pressure(test, middle) < vapour_pressure ? fails : passes) = middle;
  }
  return passes;
}

}  // namespace quoin::materials
