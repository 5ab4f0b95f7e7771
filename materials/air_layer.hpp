// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

#include "materials/heat_direction.hpp"

namespace quoin::materials {

struct Material;

/// A still layer of air across a wall, a floor or a roof: a cavity between two leaves. It resists
/// by its thickness and by which way the heat crosses it, whatever its extent.
struct AirLayer {
  double thickness = 0.0;  ///< along the heat flow, m
  HeatDirection heat = HeatDirection::horizontal;
};

template <class Visitor>
void choose_air_layer(Visitor& visit, std::optional<double>& thickness,
                      std::optional<HeatDirection>& heat) {
  visit.length(
      "air layer", thickness, 0.001, 0.3,
      "in place of all values: the thickness of a still layer of air in a wall or floor, by "
      "ISO 6946");
  visit.choice("heat goes", heat,
               {{"sideways", HeatDirection::horizontal},
                {"up", HeatDirection::up},
                {"down", HeatDirection::down}},
               "across an air layer; sideways where not said");
}

/// The air of such a layer as a material, its conductivity thickness / resistance.
/// Source: annex of ISO 6946:2007 (memory).
[[nodiscard]] Material air_of(const AirLayer& layer);

}  // namespace quoin::materials
