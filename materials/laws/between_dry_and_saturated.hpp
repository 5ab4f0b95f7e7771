// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <fmt/format.h>

#include <limits>
#include <optional>
#include <string>
#include <string_view>

#include "materials/laws/basis.hpp"

namespace quoin::materials {

/// Linear in the degree of saturation, between the conductivities measured dry and saturated.
/// Source: both ends measured on six old brick masonries (Materials 15 (2022) 4001); the straight
/// line between them is common practice, no source.
struct BetweenDryAndSaturated {
  static constexpr std::string_view name = "between dry and saturated";

  double saturated_conductivity = std::numeric_limits<double>::quiet_NaN();  ///< W/(m K)
};

template <class Visitor>
void describe(Visitor& visit, BetweenDryAndSaturated& law) {
  visit.conductivity("saturated conductivity", law.saturated_conductivity, 0.01, 10.0,
                     "of the material full of water; its saturation tells how much that is");
}

/// W/(m K)
[[nodiscard]] inline double conductivity(const BetweenDryAndSaturated& law, const Basis& dry,
                                         double moisture) {
  const double full = fullest(dry);
  const double degree = full > 0.0 ? moisture / full : 0.0;
  return dry.conductivity + (law.saturated_conductivity - dry.conductivity) * degree;
}

[[nodiscard]] inline TrustedRange trusted(const BetweenDryAndSaturated& /*law*/, const Basis& dry) {
  if (dry.saturation) return {*dry.saturation, "it holds no more water"};
  return {0.0, "its saturation is not known; the pore space that its density allows stands in"};
}

[[nodiscard]] inline std::optional<std::string> flaw(const BetweenDryAndSaturated& law,
                                                     const Basis& dry) {
  if (law.saturated_conductivity < dry.conductivity) {
    return fmt::format(
        "the saturated conductivity {} W/(m K) is below the dry one, {} W/(m K): water conducts "
        "better than the air it displaces",
        law.saturated_conductivity, dry.conductivity);
  }
  if (!dry.saturation) {
    return "the law 'between dry and saturated' needs the saturation of the material";
  }
  return std::nullopt;
}

}  // namespace quoin::materials
