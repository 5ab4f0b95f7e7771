// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <optional>
#include <string_view>

#include "materials/moist_air.hpp"

namespace quoin::materials {

/// The moisture a household of a class adds to its air: the upper limit of the class.
/// Source: ISO 13788, humidity classes (memory): 270, 540, 810 and 1080 Pa at 0 degC outside and
/// below, falling on a line to nothing at 20 degC. Class 5 has no upper limit: it must be stated.
struct HumidityClass {
  static constexpr std::string_view name = "humidity class";
  static constexpr std::string_view about =
      "inside humidity by the class of the household: 1 stores, 2 offices and shops, 3 dwellings "
      "with few people, 4 with many, 5 laundries and pools";
  static constexpr std::string_view alone = "class";

  double number = std::numeric_limits<double>::quiet_NaN();  ///< 1 to 5
  double safety_factor = 1.0;                                ///< on what the household adds
  std::optional<double> excess = {};  ///< of class 5 at 0 degC outside and below, Pa
};

template <class Visitor>
void describe(Visitor& visit, HumidityClass& source) {
  visit.number("class", source.number, 1.0, 5.0, "1, 2, 3, 4 or 5");
  visit.number("safety factor", source.safety_factor, 1.0, 1.5,
               "on the moisture added; 1.10 in the edition of ISO 13788 of 2001");
  visit.pressure("excess", source.excess, 1080.0, 5000.0,
                 "class 5, which has no upper limit: how far the vapour pressure inside lies above "
                 "that outside at 0 °C outside and below");
}

/// How far the vapour pressure inside lies above that outside, Pa.
[[nodiscard]] inline double vapour_excess(const HumidityClass& source,
                                          double /*inside_temperature*/,
                                          double outside_temperature) {
  constexpr double step = 270.0;  // Pa, from one class to the next
  return source.safety_factor * source.excess.value_or(step * source.number) *
         seasonal_share(outside_temperature);
}

}  // namespace quoin::materials
