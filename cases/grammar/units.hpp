// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <span>
#include <string>
#include <string_view>

namespace quoin::cases {

/// What a number measures. Inside it is in SI or degC, humidity and shares as a ratio.
enum class Measure : std::uint8_t {
  length,         ///< m
  temperature,    ///< degC
  difference,     ///< of temperatures, K
  humidity,       ///< relative, 0 to 1
  conductivity,   ///< W/(m K)
  resistance,     ///< of a surface, m2K/W
  density,        ///< kg/m3
  speed,          ///< m/s
  water_volume,   ///< water by volume, m3/m3
  water_mass,     ///< water by mass of the dry material, kg/kg
  water_density,  ///< water in kg per m3 of material
  moisture_rate,  ///< vapour given off, kg/s
  volume,         ///< m3
  air_change,     ///< 1/s
  loss,           ///< heat loss of a space by metre of the section, W/(m K)
  evaporation,    ///< water leaving a surface, kg/(m2 s)
  pressure,       ///< of vapour, Pa
  share,          ///< relative, 0 to 1
  openings,       ///< of an air layer or a void to outdoors, m2 by metre or by m2
  duration,       ///< h
  number,         ///< without a unit
};

/// One spelling of a unit. inside = number * factor / divisor + offset: a factor or a divisor, so
/// that 330 mm and 0.33 m are the same double.
struct Unit {
  std::string_view written;  ///< as normal_unit() leaves it
  Measure measure;
  double factor = 1.0;
  double divisor = 1.0;
  double offset = 0.0;
  bool accepted = true;  ///< else known only to be refused with its value converted
};

/// Every unit a person may write.
[[nodiscard]] std::span<const Unit> units();

/// A unit without blanks, brackets, dots and raised digits: "W/(m·K)" and "W/m K" are "W/mK".
[[nodiscard]] std::string normal_unit(std::string_view unit);

/// A measure as people speak of it.
struct Spoken {
  std::string_view what;  ///< "a length"
  std::string_view unit;  ///< of a bare number, as printed: "mm"; empty for none
  bool bare;              ///< whether a number without a unit is allowed
};
[[nodiscard]] Spoken spoken(Measure measure);

/// A value with the unit a person would choose: "50 mm", "20 m", "62 %".
[[nodiscard]] std::string shown(double value, Measure measure);

/// The number that stands for an inside value in the unit of bare numbers, such that reading it
/// again gives the same double where one exists: 0.33 as a length is "330".
[[nodiscard]] std::string bare_number(double value, Measure measure);

}  // namespace quoin::cases
