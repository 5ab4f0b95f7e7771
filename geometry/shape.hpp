// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// What a section shows of one region.
struct Shape {
  double area = 0.0;       ///< m2
  double width = 0.0;      ///< along x, of the smallest upright rectangle around it, m
  double height = 0.0;     ///< along y, m
  std::size_t pieces = 0;  ///< parts that share no side
};

[[nodiscard]] Shape shape_of(const Section& section, RegionId region);

}  // namespace quoin::geometry
