// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>

#include "materials/heat_direction.hpp"

namespace quoin::materials {

struct Material;

/// A layer of air across a wall, a floor or a roof: a cavity between two leaves. Still, it resists
/// by its thickness and by which way the heat crosses it, whatever its extent.
struct AirLayer {
  double thickness = 0.0;  ///< along the heat flow, m
  HeatDirection heat = HeatDirection::horizontal;
  /// Of ventilation openings to outdoors, m2 by metre of an upright layer's length, by m2 of a
  /// level one; 0: none worth mentioning.
  double openings = 0.0;
  std::optional<double> resistance = {};  ///< m2K/W, where it is known better than by its thickness
};

template <class Visitor>
void choose_air_layer(Visitor& visit, std::optional<double>& thickness,
                      std::optional<HeatDirection>& heat, std::optional<double>& openings,
                      std::optional<double>& resistance) {
  visit.length("air layer", thickness, 0.001, 0.3,
               "in place of all values: the thickness of a layer of air in a wall or floor, by "
               "ISO 6946");
  visit.choice("heat goes", heat,
               {{"sideways", HeatDirection::horizontal},
                {"up", HeatDirection::up},
                {"down", HeatDirection::down}},
               "across an air layer; sideways where not said");
  visit.openings("openings", openings, 0.0, 0.1,
                 "of an air layer to outdoors, by metre of wall or m2 of floor; up to 500 it is "
                 "still air, from 1500 it is as good as outdoors");
  visit.resistance("layer resistance", resistance, 0.01, 3.0,
                   "of an air layer, where it is not that of its thickness: foil-faced, measured");
}

/// How much a layer takes part in the air outside. Source: ISO 6946 (memory).
enum class Ventilation : std::uint8_t { none, slight, well };
[[nodiscard]] Ventilation ventilation_of(const AirLayer& layer);

/// The resistance, m2K/W, that a slightly ventilated layer has in a plane wall whose whole
/// resistance lies between that of the layer still and that of the layer as good as outdoors, in
/// proportion to its openings. `outer`: of what lies outside the layer with the outside surface.
/// Not positive where so much lies there that no layer can stand for it.
/// Source: ISO 6946:2007 and 2017, whole resistance of a wall (memory); put upon the layer by us.
[[nodiscard]] double slightly_ventilated_resistance(const AirLayer& layer, double outer);

/// The resistance, m2K/W, of a face before a layer that is as good as outdoors: that of still air,
/// as inside. Source: ISO 6946 (memory).
[[nodiscard]] double well_ventilated_face_resistance(const AirLayer& layer);

/// The air of such a layer as a material, its conductivity thickness / resistance.
/// Source: annex of ISO 6946:2007 (memory).
[[nodiscard]] Material air_of(const AirLayer& layer);

}  // namespace quoin::materials
