// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <string_view>

#include "materials/moist_air.hpp"

namespace quoin::materials {

/// The moisture a household of a class adds to its air: the upper limit of the class.
/// Source: ISO 13788, humidity classes (memory): 270, 540, 810 and 1080 Pa at 0 degC outside and
/// below, falling on a line to nothing at 20 degC. Class 5 has no upper limit.
struct HumidityClass {
  static constexpr std::string_view name = "humidity class";
  static constexpr std::string_view about =
      "inside humidity by the class of the household: 1 stores, 2 offices and shops, 3 dwellings "
      "with few people, 4 with many";
  static constexpr std::string_view alone = "class";

  double number = std::numeric_limits<double>::quiet_NaN();  ///< 1, 2, 3 or 4
  double safety_factor = 1.0;                                ///< on what the household adds
};

template <class Visitor>
void describe(Visitor& visit, HumidityClass& source) {
  visit.number("class", source.number, 1.0, 4.0, "1, 2, 3 or 4");
  visit.number("safety factor", source.safety_factor, 1.0, 1.5,
               "on the moisture added; 1.10 in the edition of ISO 13788 of 2001");
}

/// How far the vapour pressure inside lies above that outside, Pa.
[[nodiscard]] inline double vapour_excess(const HumidityClass& source,
                                          double /*inside_temperature*/,
                                          double outside_temperature) {
  constexpr double step = 270.0;  // Pa, from one class to the next
  return source.safety_factor * step * source.number * seasonal_share(outside_temperature);
}

}  // namespace quoin::materials
