// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <string_view>

#include "materials/moist_air.hpp"

namespace quoin::materials {

/// The vapour people, cooking and washing give off, carried away by the air change.
/// Source: balance of vapour in a mixed room, as in ISO 13788 (memory).
struct MoistureProduction {
  static constexpr std::string_view name = "moisture production";
  static constexpr std::string_view about =
      "inside humidity from what people, cooking and washing give off and the air carries away";

  double rate = std::numeric_limits<double>::quiet_NaN();        ///< kg/s
  double volume = std::numeric_limits<double>::quiet_NaN();      ///< m3
  double air_change = std::numeric_limits<double>::quiet_NaN();  ///< 1/s, of inside air
  double safety_factor = 1.0;                                    ///< on what is given off
};

template <class Visitor>
void describe(Visitor& visit, MoistureProduction& source) {
  visit.moisture_rate("rate", source.rate, 1e-7, 0.01, "of all vapour given off");
  visit.volume("volume", source.volume, 1.0, 1e5, "of the air inside");
  visit.air_change("air change", source.air_change, 5e-6, 0.015,
                   "how often outside air replaces it");
  visit.number("safety factor", source.safety_factor, 1.0, 1.5, "on the moisture given off");
}

/// How far the vapour pressure inside lies above that outside, Pa.
[[nodiscard]] inline double vapour_excess(const MoistureProduction& source,
                                          double inside_temperature,
                                          double /*outside_temperature*/) {
  const double concentration = source.rate / (source.air_change * source.volume);  // kg/m3
  return source.safety_factor * vapour_pressure(concentration, inside_temperature);
}

}  // namespace quoin::materials
