// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>
#include <utility>

#include "materials/material.hpp"

namespace quoin::materials {

inline Sourced sourced(double value) { return {value, Confidence::stated, {}, {}, {}}; }

inline Material material(double conductivity, double density, std::optional<double> saturation,
                         Law law) {
  Material made;
  made.name = "sample";
  made.conductivity = sourced(conductivity);
  made.density = sourced(density);
  if (saturation) made.saturation = sourced(*saturation);
  made.law = std::move(law);
  return made;
}

}  // namespace quoin::materials
