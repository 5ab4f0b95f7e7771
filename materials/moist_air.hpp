// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace quoin::materials {

// Temperatures in degC. Humidities are relative, 0 to 1: 0.62 for 62 %. Humidities that have a
// temperature at which they would saturate, and limits, are above 0.

/// The saturation pressure of water vapour, Pa; over ice below 0 degC.
/// Source: ISO 13788 (memory). Both branches give 610.5 Pa at 0 degC; the slope has a kink there.
[[nodiscard]] double saturation_pressure(double temperature);

/// The temperature, degC, at which a vapour pressure above 0 Pa saturates: the exact inverse of
/// saturation_pressure.
[[nodiscard]] double saturation_temperature(double pressure);

/// The temperature, degC, at which air begins to condense; below 0 degC the frost point.
[[nodiscard]] double dew_point(double temperature, double humidity);

/// The humidity at a surface in contact with the air of a room; above 1 where it condenses.
[[nodiscard]] double surface_humidity(double air_temperature, double air_humidity,
                                      double surface_temperature);

/// The temperature, degC, at which a surface has just the humidity `limit` (0.8 for mould, 1 for
/// condensation).
[[nodiscard]] double lowest_safe_surface_temperature(double air_temperature, double air_humidity,
                                                     double limit);

/// The temperature factor fRsi of a surface between an inside and an outside, which differ.
[[nodiscard]] double temperature_factor(double surface_temperature, double inside_temperature,
                                        double outside_temperature);

/// The temperature factor fRsi that a surface needs for its humidity to stay at `limit`, in this
/// air inside and this temperature outside, which differs from the inside one. Above 1 where the
/// air itself is too humid; below 0 where no surface can be too cold.
[[nodiscard]] double factor_needed(double air_temperature, double air_humidity,
                                   double outside_temperature, double limit);

/// The humidity of the air up to which the humidity at the surface stays at or below `limit`; 1 at
/// most.
[[nodiscard]] double highest_safe_humidity(double air_temperature, double surface_temperature,
                                           double limit);

/// The mass of vapour in air, kg/m3.
/// Source: ideal gas, 461.5 J/(kg K), as in ISO 13788 (memory).
[[nodiscard]] double vapour_concentration(double temperature, double humidity);

/// The pressure, Pa, of that much vapour, kg/m3, at a temperature, degC.
[[nodiscard]] double vapour_pressure(double concentration, double temperature);

/// How much of what a household adds to its air in winter it adds at this temperature outside: all
/// at 0 degC and below, nothing at 20 degC and above, on a line between. Windows open in summer.
/// Source: ISO 13788, humidity classes (memory).
[[nodiscard]] double seasonal_share(double outside_temperature);

/// How much more vapour the air inside holds than the air outside, kg/m3: what the household adds.
[[nodiscard]] double moisture_excess(double inside_temperature, double inside_humidity,
                                     double outside_temperature, double outside_humidity);

/// The humidity above which mould can start to grow on a sensitive surface given time: 1 at and
/// below 0 degC, 0.80 above 20 degC.
/// Source: A mathematical model of mould growth on wooden material, Wood Science and Technology 33
/// (1999) (memory).
[[nodiscard]] double critical_mould_humidity(double temperature);

}  // namespace quoin::materials
