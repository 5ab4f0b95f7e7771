// SPDX-License-Identifier: Apache-2.0
#include "materials/air_layer.hpp"

#include "materials/material.hpp"
#include "materials/surface_resistance.hpp"

namespace quoin::materials {

Material air_of(const AirLayer& layer) {
  Material air;
  air.about = "a still layer of air";
  const double conductivity = layer.thickness / air_layer_resistance(layer.thickness, layer.heat);
  air.conductivity = {conductivity, Confidence::memory, "ISO 6946", {}, {}};
  air.density = {1.23, Confidence::memory, "ISO 10456", {}, {}};
  air.vapour_resistance_dry = air.vapour_resistance_wet =
      Sourced{1.0, Confidence::memory, "ISO 10456", {}, {}};
  air.law_confidence = Confidence::memory;
  air.law_source = "ISO 6946";
  air.air_layer = layer;
  return air;
}

}  // namespace quoin::materials
