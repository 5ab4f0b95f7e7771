// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <optional>
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
  /// At 20 degC outside and above, 1/s; that of winter where not given.
  std::optional<double> summer_air_change = {};
};

template <class Visitor>
void describe(Visitor& visit, MoistureProduction& source) {
  visit.moisture_rate("rate", source.rate, 1e-7, 0.01, "of all vapour given off");
  visit.volume("volume", source.volume, 1.0, 1e5, "of the air inside");
  visit.air_change("air change", source.air_change, 5e-6, 0.015,
                   "how often outside air replaces it");
  visit.number("safety factor", source.safety_factor, 1.0, 1.5, "on the moisture given off");
  visit.air_change("summer air change", source.summer_air_change, 5e-6, 0.015,
                   "with the windows open, at 20 °C outside and above; from the other on a line "
                   "between 0 and 20 °C");
}

/// How far the vapour pressure inside lies above that outside, Pa.
[[nodiscard]] inline double vapour_excess(const MoistureProduction& source,
                                          double inside_temperature, double outside_temperature) {
  const double winter = seasonal_share(outside_temperature);
  const double air_change = winter * source.air_change +
                            (1.0 - winter) * source.summer_air_change.value_or(source.air_change);
  const double concentration = source.rate / (air_change * source.volume);  // kg/m3
  return source.safety_factor * vapour_pressure(concentration, inside_temperature);
}

}  // namespace quoin::materials
