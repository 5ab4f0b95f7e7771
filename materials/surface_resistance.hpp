// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>

#include "materials/heat_direction.hpp"
#include "materials/part.hpp"

namespace quoin::materials {

/// What a calculation is for; each purpose has surface resistances of its own.
enum class Purpose : std::uint8_t {
  surface_temperature,  ///< coldest spots and mould: ISO 13788
  heat_flow,            ///< L2D and psi: ISO 6946
};

/// Where a surface looks, seen from the material.
enum class Facing : std::uint8_t {
  sideways,
  up,    ///< a floor, a roof
  down,  ///< a ceiling
};

/// The air in front of a surface.
enum class Side : std::uint8_t { inside, outside, unheated };

/// A surface, as far as its resistance depends on it.
struct Face {
  Side side = Side::inside;
  Facing facing = Facing::sideways;
  Part part = Part::fabric;
  std::optional<double> wind;  ///< m/s; only outside
  /// Which way heat crosses it where it is level, if that is not the usual one.
  std::optional<HeatDirection> heat = {};
};

/// The surface resistance of a face, m2K/W. Where the face does not say which way it goes, heat is
/// taken to leave an inside space and to enter an unheated one: so it rises through a ceiling seen
/// from inside and through an attic floor seen from the attic. An unheated space has the values of
/// an inside one. Source: ISO 6946:2017 and ISO 13788:2012 (memory).
[[nodiscard]] double surface_resistance(const Face& face, Purpose purpose);

/// That of a surface before still air that heat crosses one way, m2K/W. Source: ISO 6946 (memory).
[[nodiscard]] double still_air_resistance(HeatDirection direction);

/// The resistance of an inside surface in a re-entrant corner of a frame, m2K/W, where air and
/// radiation reach it less. Stated for heat flow; taken for surface temperature, too.
/// Source: EN ISO 10077-2 (memory).
inline constexpr double frame_corner_resistance = 0.20;

/// The outside surface resistance, m2K/W, in a wind, m/s: convection 4 + 4 v and radiation of a
/// surface of emissivity 0.9 at 0 degC.
/// Source: annex of ISO 6946:2007 (memory).
[[nodiscard]] double outside_resistance(double wind);

/// The resistance, m2K/W, of an unventilated air layer between surfaces of emissivity 0.9, from its
/// thickness along the heat flow, m, above 0 and up to 0.3.
/// Source: annex of ISO 6946:2007 (memory), radiation at 10 degC.
[[nodiscard]] double air_layer_resistance(double thickness, HeatDirection direction);

}  // namespace quoin::materials
