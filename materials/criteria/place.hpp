// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace quoin::materials {

/// A place on a surface as far as criteria look at it.
struct Place {
  double temperature = 0.0;      ///< of the surface, degC
  double factor = 0.0;           ///< fRsi
  double vapour_pressure = 0.0;  ///< of the air in front, Pa; not looked at where no humidity is
};

/// The temperatures of the air on both sides, degC.
struct Sides {
  double inside = 0.0;
  double outside = 0.0;
};

}  // namespace quoin::materials
