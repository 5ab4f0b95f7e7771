// SPDX-License-Identifier: Apache-2.0
#include "materials/moisture.hpp"

#include <fmt/format.h>

#include <optional>

namespace quoin::materials {
namespace {

using Moisture = std::variant<double, UnknownMoisture>;

/// The humidity up to which the moisture taken up from the air is close to proportional to it.
constexpr double tabulated_humidity = 0.80;

struct MoistureOf {
  const Material& material;

  Moisture operator()(NamedState state) const {
    if (state == NamedState::dry) return 0.0;
    if (material.saturation) return degree_of_saturation(state) * material.saturation->value;
    return UnknownMoisture{fmt::format(
        "no saturation is known for '{}', so that its states other than dry are unknown: state the "
        "moisture as a number, such as 0.05 m3/m3, or give the material a saturation",
        material.name)};
  }

  Moisture operator()(VolumeFraction moisture) const { return moisture.value; }

  Moisture operator()(MassRatio moisture) const {
    if (material.density.value <= 0.0) {
      return UnknownMoisture{fmt::format(
          "no density is known for '{}', so that a moisture by mass says nothing: give it a "
          "density, or state the moisture by volume, such as 0.05 m3/m3",
          material.name)};
    }
    return moisture.value * material.density.value / water_density;
  }

  Moisture operator()(Concentration moisture) const { return moisture.value / water_density; }

  Moisture operator()(AtHumidity air) const {
    if (!material.moisture_at_80) {
      return UnknownMoisture{
          fmt::format("no moisture at 80 % humidity is known for '{}': state "
                      "the moisture as a number, such as 0.01 m3/m3",
                      material.name)};
    }
    if (air.humidity > tabulated_humidity) {
      return UnknownMoisture{fmt::format(
          "only the moisture up to 80 % humidity is known for '{}', and beyond it grows steeply: "
          "state the moisture at {:.3g} % as a number, such as 0.05 m3/m3",
          material.name, 100.0 * air.humidity)};
    }
    return material.moisture_at_80->value * (air.humidity / tabulated_humidity);
  }
};

}  // namespace

double degree_of_saturation(NamedState state) {
  switch (state) {
    case NamedState::dry:
      return 0.0;
    case NamedState::sheltered:
      return 0.08;
    case NamedState::exposed:
      return 0.20;
    case NamedState::damp:
      return 0.40;
    case NamedState::saturated:
      return 1.0;
  }
  return 1.0;
}

std::variant<double, UnknownMoisture> moisture_of(const Material& material,
                                                  const MoistureState& state) {
  return std::visit(MoistureOf{material}, state);
}

bool wetter_than_damp(const Material& material, double moisture) {
  if (!material.saturation) return moisture > 0.10;
  return moisture > degree_of_saturation(NamedState::damp) * material.saturation->value;
}

}  // namespace quoin::materials
