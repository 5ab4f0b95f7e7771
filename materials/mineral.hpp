// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "materials/material.hpp"

namespace quoin::materials {

/// Whether a material is of the kind of masonry, concrete or plaster, by what it conducts dry:
/// insulation, timber and light blocks conduct less, metals more. Common practice, no source.
[[nodiscard]] inline bool is_mineral(const Material& material) {
  constexpr double least = 0.2, most = 5.0;  // W/(m K)
  return !material.cavity && !material.air_layer && material.conductivity.value >= least &&
         material.conductivity.value <= most;
}

}  // namespace quoin::materials
