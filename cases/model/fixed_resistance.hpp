// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "cases/model/case.hpp"
#include "materials/surface_resistance.hpp"

namespace quoin::cases {

/// The surface resistance of a space that has the same for both purposes: one that is stated, or
/// that of fabric outside in the wind of the space, m2K/W.
[[nodiscard]] inline double fixed_resistance(const Space& space) {
  return space.resistance.value_or(
      materials::surface_resistance({.side = materials::Side::outside, .wind = space.wind},
                                    materials::Purpose::surface_temperature));
}

}  // namespace quoin::cases
