// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <optional>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// The material or the space number `i` of a test.
inline Fill material(std::size_t i) { return RegionId(i); }
inline Fill space(std::size_t i) { return SpaceId(i); }

/// A painted rectangle.
inline Patch patch(Fill fill, double x0, double x1, double y0, double y1,
                   std::optional<RegionId> only_over = {}) {
  return {fill, rectangle(x0, x1, y0, y1), only_over};
}

/// What a section shows at a place that lies on no line; nothing beyond its ends.
inline Fill shown(const Section& section, Point place) {
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      if (section.x[i] < place.x && place.x < section.x[i + 1] && section.y[j] < place.y &&
          place.y < section.y[j + 1]) {
        return section.cell(i, j).below;
      }
    }
  }
  return std::monostate{};
}

}  // namespace quoin::geometry
