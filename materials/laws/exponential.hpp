// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <optional>
#include <string>
#include <string_view>

#include "materials/laws/basis.hpp"

namespace quoin::materials {

/// Dry conductivity times exp(f psi), or exp(f u): the conversion of ISO 10456.
/// Source: ISO 10456:2007 (memory). Up to about 0.05 m3/m3, the moisture that materials take up
/// from the air; at saturation 3.4 to 6 times what was measured (Materials 15 (2022) 4001).
struct Exponential {
  static constexpr std::string_view name = "exponential";

  double per_volume = 0.0;  ///< f of psi, per m3/m3
  double per_mass = 0.0;    ///< f of u, per kg/kg
  double limit = 0.05;      ///< trusted up to here, m3/m3
};

template <class Visitor>
void describe(Visitor& visit, Exponential& law) {
  visit.number("per volume", law.per_volume, 0.0, 30.0,
               "coefficient of the moisture by volume, m3/m3 (10 for fired clay)");
  visit.number("per mass", law.per_mass, 0.0, 30.0,
               "coefficient of the moisture by mass, kg/kg (4 for aircrete)");
  visit.volume_fraction("trusted to", law.limit, 0.0, 1.0,
                        "a warning is given above this moisture");
}

/// W/(m K)
[[nodiscard]] inline double conductivity(const Exponential& law, const Basis& dry,
                                         double moisture) {
  return dry.conductivity *
         std::exp(law.per_volume * moisture + law.per_mass * mass_ratio(moisture, dry.density));
}

[[nodiscard]] inline TrustedRange trusted(const Exponential& law, const Basis& /*dry*/) {
  return {law.limit,
          "it is made for moisture taken up from the air; near saturation it gives 3.4 to 6 times "
          "what tests on old brickwork gave"};
}

[[nodiscard]] inline std::optional<std::string> flaw(const Exponential& law, const Basis& /*dry*/) {
  if (law.per_volume > 0.0 || law.per_mass > 0.0) return std::nullopt;
  return "the law 'exponential' needs a coefficient, 'per volume' or 'per mass'";
}

}  // namespace quoin::materials
