// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <string_view>
#include <variant>

namespace quoin::materials {

/// Water leaves a surface at a rate that the author states: a claim that no calculation checks.
struct EvaporationRate {
  static constexpr std::string_view name = "evaporation";
  static constexpr std::string_view about = "water leaving the surfaces of this space, as claimed";
  static constexpr std::string_view alone = "rate";

  double rate = std::numeric_limits<double>::quiet_NaN();  ///< kg/(m2 s)
};

template <class Visitor>
void describe(Visitor& visit, EvaporationRate& rate) {
  visit.evaporation("rate", rate.rate, 0.0, 3e-4, "of evaporation");
}

/// A surface kept wet: water leaves it by the difference of vapour pressure between it and the air,
/// through the air film and a coat.
struct WetSurface {
  static constexpr std::string_view name = "wet surface";
  static constexpr std::string_view about =
      "the surfaces of this space are wet: water leaves them by the difference of vapour pressure";
  static constexpr std::string_view alone = "coat sd";

  double coat_sd = 0.0;  ///< as much still air as resists vapour like the coat, m
  double wetness = 1.0;  ///< humidity of the wet material, relative
};

template <class Visitor>
void describe(Visitor& visit, WetSurface& wet) {
  visit.length("coat sd", wet.coat_sd, 0.0, 100.0,
               "of the coat on the wet material: limewash 0.05 m, plastic paint 1 m; 0 m: none");
  visit.humidity("wetness", wet.wetness, 0.3, 1.0, "humidity in the pores of the wet material");
}

/// Both ways to know how fast water leaves a surface.
using Evaporation = std::variant<EvaporationRate, WetSurface>;

/// The heat that water takes to evaporate, J/kg, about 10 degC. Source: ISO 13788 (memory).
inline constexpr double heat_of_evaporation = 2.5e6;

/// How fast water leaves a wet surface of a temperature, degC, into air with a vapour pressure, Pa;
/// below 0 where it condenses. Convection in W/(m2K). kg/(m2 s).
/// Source: analogy of heat and mass transfer in air, 6.85e-9 kg/(m2 s Pa) by W/(m2K); permeability
/// of still air 2.0e-10 kg/(m s Pa), as in ISO 13788 (memory).
[[nodiscard]] double evaporation_rate(const WetSurface& wet, double surface_temperature,
                                      double vapour_pressure, double convection);

/// The air film before a surface as still air that resists vapour as much, m. Convection in
/// W/(m2K). Source: analogy of heat and mass transfer, as in evaporation_rate.
[[nodiscard]] double film_sd(double convection);

/// The coefficient of convection, W/(m2K), inside at upright surfaces, and outside in a wind, m/s.
/// Source: annex of ISO 6946:2007 (memory).
inline constexpr double inside_convection = 2.5;
[[nodiscard]] constexpr double outside_convection(double wind) { return 4.0 + 4.0 * wind; }

}  // namespace quoin::materials
