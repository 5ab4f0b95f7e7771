// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <string_view>

#include "materials/laws/basis.hpp"

namespace quoin::materials {

/// Linear in the moisture by mass.
/// Source: 8.2 to 9.5 % for each mass-% joins the dry and the saturated value of each of six old
/// brick masonries (Materials 15 (2022) 4001).
struct PerMassPercent {
  static constexpr std::string_view name = "per mass percent";

  /// Growth relative to the dry value in % per mass-%, which is the growth per kg/kg.
  double increase = std::numeric_limits<double>::quiet_NaN();
};

template <class Visitor>
void describe(Visitor& visit, PerMassPercent& law) {
  visit.number("increase", law.increase, 0.0, 50.0,
               "growth of the conductivity in % of the dry value for each mass-% of moisture");
}

/// W/(m K)
[[nodiscard]] inline double conductivity(const PerMassPercent& law, const Basis& dry,
                                         double moisture) {
  return dry.conductivity * (1.0 + law.increase * mass_ratio(moisture, dry.density));
}

[[nodiscard]] inline TrustedRange trusted(const PerMassPercent& /*law*/, const Basis& dry) {
  return {fullest(dry), "it holds no more water"};
}

[[nodiscard]] inline std::optional<std::string> flaw(const PerMassPercent& /*law*/,
                                                     const Basis& /*dry*/) {
  return std::nullopt;
}

}  // namespace quoin::materials
