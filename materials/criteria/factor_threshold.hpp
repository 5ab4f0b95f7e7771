// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <optional>
#include <string_view>

#include "materials/criteria/place.hpp"

namespace quoin::materials {

/// The temperature factor fRsi must not fall below this threshold.
struct FactorThreshold {
  static constexpr std::string_view name = "fRsi";
  static constexpr std::string_view about = "the temperature factor must not fall below this";
  static constexpr std::string_view alone = "threshold";
  static constexpr bool needs_humidity = false;
  static constexpr std::string_view unit = "1";

  double threshold = 0.75;
  /// The inside surface resistance it was stated for, m2K/W; absent: that of the computation.
  std::optional<double> resistance = {};
};

template <class Visitor>
void describe(Visitor& visit, FactorThreshold& test) {
  visit.number("threshold", test.threshold, 0.05, 0.99, "the least fRsi");
  visit.resistance("Rsi", test.resistance, 0.02, 2.0,
                   "the inside surface resistance that the threshold was stated for");
}

/// How far a place is on the safe side, in units of fRsi.
[[nodiscard]] inline double margin(const FactorThreshold& test, const Place& place) {
  return place.factor - test.threshold;
}

/// The temperature, degC, at which a surface just passes.
[[nodiscard]] inline double lowest_temperature(const FactorThreshold& test,
                                               double /*vapour_pressure*/, const Sides& sides) {
  return sides.outside + test.threshold * (sides.inside - sides.outside);
}

/// The vapour pressure, Pa, up to which a surface passes: a factor does not look at it.
[[nodiscard]] inline double highest_pressure(const FactorThreshold& /*test*/,
                                             double /*surface_temperature*/) {
  return std::numeric_limits<double>::infinity();
}

}  // namespace quoin::materials
