// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <string_view>
#include <variant>

#include "materials/humidity_sources/humidity_class.hpp"
#include "materials/humidity_sources/logged_reading.hpp"
#include "materials/humidity_sources/moisture_production.hpp"

namespace quoin::materials {

/// Every way to know the inside humidity other than by stating it. A new one is one file in
/// humidity_sources/ and one line here.
using HumiditySource = std::variant<HumidityClass, MoistureProduction, LoggedReading>;

/// As case files write it.
[[nodiscard]] inline std::string_view name_of(const HumiditySource& source) {
  return std::visit([](const auto& one) { return one.name; }, source);
}

/// Why a source cannot be as described.
struct Objection {
  std::string what;
  std::string expected;
};

/// What is impossible in a source; nothing where it can be.
[[nodiscard]] inline std::optional<Objection> objection(const HumiditySource& source) {
  if (const auto* by_class = std::get_if<HumidityClass>(&source)) {
    if (by_class->number != std::floor(by_class->number))
      return Objection{"there are no humidity classes in between", "1, 2, 3, 4 or 5"};
    if (by_class->number == 5.0 && !by_class->excess)
      return Objection{"humidity class 5 has no upper limit: what it adds must be stated",
                       "{class: 5, excess: 1500 Pa}"};
    if (by_class->number != 5.0 && by_class->excess)
      return Objection{"'excess' is for humidity class 5: the others have their limits",
                       "the class alone"};
  }
  if (const auto* logged = std::get_if<LoggedReading>(&source)) {
    if (!is_complete(*logged)) {
      return Objection{"what was logged is not known in full",
                       "temperature, humidity, outside temperature and outside humidity; or table: "
                       "a CSV file with them"};
    }
    if (logged_excess(*logged) <= 0.0) {
      return Objection{"the logged air inside holds no more vapour than that outside",
                       "an inside reading that holds more vapour than the outside air"};
    }
  }
  return std::nullopt;
}

/// The humidity inside, relative, from what the household adds to the outside air; above 1 where
/// the air cannot hold it.
[[nodiscard]] inline double inside_humidity(const HumiditySource& source, double inside_temperature,
                                            double outside_temperature, double outside_humidity) {
  const double excess = std::visit(
      [&](const auto& one) { return vapour_excess(one, inside_temperature, outside_temperature); },
      source);
  return (outside_humidity * saturation_pressure(outside_temperature) + excess) /
         saturation_pressure(inside_temperature);
}

}  // namespace quoin::materials
