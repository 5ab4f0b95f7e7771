// SPDX-License-Identifier: Apache-2.0
#include "geometry/paint.hpp"

#include <cmath>

namespace quoin::geometry {

bool inside(const Outline& outline, Point place) {
  bool odd = false;
  for (std::size_t k = 0, last = outline.size() - 1; k < outline.size(); last = k++) {
    const Point a = outline[k];
    const Point b = outline[last];
    if ((a.y > place.y) != (b.y > place.y) &&
        place.x < (b.x - a.x) * (place.y - a.y) / (b.y - a.y) + a.x) {
      odd = !odd;
    }
  }
  return odd;
}

Extent extent_of(const Outline& outline) {
  Extent extent{outline.front(), outline.front()};
  for (const Point corner : outline) {
    extent.low = {std::min(extent.low.x, corner.x), std::min(extent.low.y, corner.y)};
    extent.high = {std::max(extent.high.x, corner.x), std::max(extent.high.y, corner.y)};
  }
  return extent;
}

std::vector<double> snapped_lines(std::vector<double> coordinates) {
  std::sort(coordinates.begin(), coordinates.end());
  std::vector<double> lines;
  double first_of_cluster = 0.0;
  for (const double at : coordinates) {
    if (!lines.empty() && at - first_of_cluster <= snap) continue;
    first_of_cluster = at;
    // Dividing by a whole number gives the double nearest to the decimal; multiplying does not.
    const double on_raster = std::round(at / snap) / std::round(1.0 / snap);
    if (lines.empty() || on_raster > lines.back()) lines.push_back(on_raster);
  }
  return lines;
}

}  // namespace quoin::geometry
