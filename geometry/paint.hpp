// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// Whether a place lies inside an outline (even-odd rule). Places on the outline itself may go
/// either way: ask for the middles of cells only.
[[nodiscard]] bool inside(const Outline& outline, Point place);

/// The smallest upright rectangle around an outline: lower left and upper right corner.
struct Extent {
  Point low;
  Point high;
};
[[nodiscard]] Extent extent_of(const Outline& outline);

/// The lines of a sheet along one axis: every coordinate of its outlines, those within `snap` of
/// each other made one, each a multiple of `snap`; ascending.
[[nodiscard]] std::vector<double> snapped_lines(std::vector<double> coordinates);

/// Calls paint(cell index) for each cell of the grid of lines x and y whose middle lies in the
/// outline.
template <class Paint>
void for_each_cell_in(const Outline& outline, const std::vector<double>& x,
                      const std::vector<double>& y, Paint paint) {
  const auto [low, high] = extent_of(outline);
  const auto first = [](const std::vector<double>& lines, double at) {
    // A line lies up to one and a half rasters from the coordinates that were joined in it.
    return static_cast<std::size_t>(std::lower_bound(lines.begin(), lines.end(), at - 2 * snap) -
                                    lines.begin());
  };
  for (std::size_t j = first(y, low.y); j + 1 < y.size() && y[j] < high.y; ++j) {
    for (std::size_t i = first(x, low.x); i + 1 < x.size() && x[i] < high.x; ++i) {
      if (inside(outline, {(x[i] + x[i + 1]) / 2, (y[j] + y[j + 1]) / 2})) {
        paint(j * (x.size() - 1) + i);
      }
    }
  }
}

}  // namespace quoin::geometry
