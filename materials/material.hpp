// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "materials/air_layer.hpp"
#include "materials/cavity.hpp"
#include "materials/law.hpp"
#include "materials/part.hpp"

namespace quoin::materials {

/// How well a value is known.
enum class Confidence : std::uint8_t {
  published,  ///< read in a published text, which the source names
  memory,     ///< recalled from the named text, not read again for this entry
  typical,    ///< common practice, no source
  stated,     ///< given by the author of the case
};

/// A value with where it comes from. Unit as the member that holds it says.
struct Sourced {
  double value = 0.0;
  Confidence confidence = Confidence::stated;
  std::string source;         ///< empty for stated values
  std::optional<double> low;  ///< the spread met in practice, where known
  std::optional<double> high;
};

/// A building material.
struct Material {
  std::string name;
  std::string about;                      ///< one line for the catalogue
  Sourced conductivity;                   ///< dry, W/(m K)
  Sourced density;                        ///< dry, kg/m3; 0: not known
  std::optional<Sourced> saturation;      ///< moisture content of the saturated material, m3/m3
  std::optional<Sourced> moisture_at_80;  ///< in equilibrium with 80 % humidity, m3/m3
  std::optional<Sourced> vapour_resistance_dry;  ///< mu; infinite for metal and glass
  std::optional<Sourced> vapour_resistance_wet;
  Law law;  ///< how the conductivity grows with moisture
  Confidence law_confidence = Confidence::stated;
  std::string law_source;  ///< of the values in the law; empty where the author states them
  Part part = Part::fabric;
  std::optional<Cavity> cavity;  ///< air in a hollow of a frame, whose shape tells its conductivity
  std::optional<AirLayer> air_layer;  ///< a still layer of air, whose conductivity follows from it
};

}  // namespace quoin::materials
