// SPDX-License-Identifier: Apache-2.0
#include "materials/air_layer.hpp"

#include "materials/material.hpp"
#include "materials/surface_resistance.hpp"

namespace quoin::materials {
namespace {

// m2 by metre of an upright layer, by m2 of a level one.
constexpr double still_up_to = 500e-6;
constexpr double open_from = 1500e-6;

double still_resistance(const AirLayer& layer) {
  return layer.resistance.value_or(air_layer_resistance(layer.thickness, layer.heat));
}

}  // namespace

Ventilation ventilation_of(const AirLayer& layer) {
  if (layer.openings <= still_up_to) return Ventilation::none;
  return layer.openings < open_from ? Ventilation::slight : Ventilation::well;
}

double slightly_ventilated_resistance(const AirLayer& layer, double outer) {
  AirLayer closed = layer;
  closed.resistance.reset();
  const double share = (layer.openings - still_up_to) / (open_from - still_up_to);
  const double still = still_resistance(closed) + outer;
  return still - share * (still - well_ventilated_face_resistance(layer)) - outer;
}

double well_ventilated_face_resistance(const AirLayer& layer) {
  return still_air_resistance(layer.heat);
}

Material air_of(const AirLayer& layer) {
  Material air;
  air.about = ventilation_of(layer) == Ventilation::none ? "a still layer of air"
                                                         : "a ventilated layer of air";
  const Confidence confidence = layer.resistance ? Confidence::stated : Confidence::memory;
  const char* const source = layer.resistance ? "" : "ISO 6946";
  air.conductivity = {layer.thickness / still_resistance(layer), confidence, source, {}, {}};
  air.density = {1.23, Confidence::memory, "ISO 10456", {}, {}};
  air.vapour_resistance_dry = air.vapour_resistance_wet =
      Sourced{1.0, Confidence::memory, "ISO 10456", {}, {}};
  air.law_confidence = Confidence::memory;
  air.law_source = "ISO 6946";
  air.air_layer = layer;
  return air;
}

}  // namespace quoin::materials
