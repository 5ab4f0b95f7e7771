// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// Which lines of a section's grid hold a corner of the field: a place where temperature, flux or
/// the pressure of vapour is not smooth. Shape: one flag a line.
struct FieldCorners {
  std::vector<char> on_x;  ///< lines of constant x
  std::vector<char> on_y;
};

[[nodiscard]] FieldCorners field_corners(const Section& section);

}  // namespace quoin::geometry
