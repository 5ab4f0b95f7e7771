// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "materials/moist_air.hpp"

namespace quoin::materials {

/// What a logger found the household to add: means inside and outside over the same days. Carried
/// over to other weather in proportion to the line of the humidity classes of ISO 13788 (memory).
struct LoggedReading {
  static constexpr std::string_view name = "logged";
  static constexpr std::string_view about =
      "inside humidity from what loggers inside and outside found over the same days, a week or "
      "more";

  std::optional<double> temperature = {};          ///< inside, degC
  std::optional<double> humidity = {};             ///< inside
  std::optional<double> outside_temperature = {};  ///< degC
  std::optional<double> outside_humidity = {};
  std::string table = {};  ///< a file of readings that these are the means of, not yet read
};

template <class Visitor>
void describe(Visitor& visit, LoggedReading& source) {
  visit.temperature("temperature", source.temperature, -10.0, 45.0, "mean inside");
  visit.humidity("humidity", source.humidity, 0.05, 1.0, "mean inside");
  visit.temperature("outside temperature", source.outside_temperature, -40.0, 15.0,
                    "mean outside over the same days; warmer days tell nothing of winter");
  visit.humidity("outside humidity", source.outside_humidity, 0.05, 1.0, "mean outside");
  visit.text("table", source.table,
             "in place of the means a CSV file beside the case file, a row a reading, with these "
             "columns");
}

/// Whether all four means are known.
[[nodiscard]] inline bool is_complete(const LoggedReading& source) {
  return source.temperature && source.humidity && source.outside_temperature &&
         source.outside_humidity;
}

/// What the loggers found, Pa: the vapour pressure inside above that outside. All means are known.
[[nodiscard]] inline double logged_excess(const LoggedReading& source) {
  return *source.humidity * saturation_pressure(*source.temperature) -
         *source.outside_humidity * saturation_pressure(*source.outside_temperature);
}

/// How far the vapour pressure inside lies above that outside, Pa.
[[nodiscard]] inline double vapour_excess(const LoggedReading& source,
                                          double /*inside_temperature*/,
                                          double outside_temperature) {
  return logged_excess(source) * seasonal_share(outside_temperature) /
         seasonal_share(*source.outside_temperature);
}

}  // namespace quoin::materials
