// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <optional>
#include <string_view>

namespace quoin::materials {

inline constexpr double water_density = 1000.0;  ///< kg/m3

/// The dry material a moisture law builds on.
struct Basis {
  double conductivity = 0.0;         ///< dry, W/(m K)
  double density = 0.0;              ///< dry, kg/m3
  std::optional<double> saturation;  ///< moisture content of the saturated material, m3/m3
};

/// The space between the grains that water could fill at most, m3/m3.
/// Source: grains of stone, fired clay and lime weigh 2600 to 2800 kg/m3 (common practice, no
/// source); the heaviest gives the upper bound, also for wood and foams, whose solids are lighter.
[[nodiscard]] constexpr double pore_space(double density) {
  return std::clamp(1.0 - density / 2800.0, 0.0, 1.0);
}

/// The moisture beyond which nothing more goes in, m3/m3: the saturation, or the pore space where
/// no saturation is known.
[[nodiscard]] constexpr double fullest(const Basis& basis) {
  return basis.saturation.value_or(pore_space(basis.density));
}

/// Moisture per dry mass, kg/kg, of a moisture in m3/m3.
[[nodiscard]] constexpr double mass_ratio(double moisture, double density) {
  return moisture * water_density / density;
}

/// How far a moisture law is trusted: from dry to `limit`.
struct TrustedRange {
  double limit = 0.0;       ///< m3/m3
  std::string_view beyond;  ///< what is known of the law beyond it, in plain words
};

}  // namespace quoin::materials
