// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <set>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// Whether a place lies inside an outline (even-odd rule). Places on the outline itself may go
/// either way: ask for the middles of cells and triangles only.
[[nodiscard]] bool inside(const Outline& outline, Point place);

/// The smallest upright rectangle around an outline: lower left and upper right corner.
struct Extent {
  Point low;
  Point high;
};
[[nodiscard]] Extent extent_of(const Outline& outline);

/// The multiple of `snap` nearest to a length, m, as the double nearest to its decimal.
[[nodiscard]] double on_raster(double length);

/// A sheet with every place on the raster.
[[nodiscard]] Sheet on_raster(Sheet sheet);

/// The lines of a sheet along one axis: every coordinate of its outlines, those within `snap` of
/// each other made one, each a multiple of `snap`; ascending.
[[nodiscard]] std::vector<double> snapped_lines(std::vector<double> coordinates);

/// The lines a whole sheet needs, those for its sloping edges included.
[[nodiscard]] Lines lines_of(const Sheet& sheet);

/// A patch laid on a grid: the cells it fills, and the halves of those its edges divide.
class Stencil {
 public:
  Stencil(const Outline& outline, const Lines& lines);

  /// Calls paint(cell index, half) for each cell or half of a cell in the outline. Shape: half is
  /// none for a whole cell; else `below` says which triangle, `split` how it is divided.
  struct Half {
    Split split = Split::none;
    bool below = true;
  };
  template <class Paint>
  void paint(Paint paint) const {
    for (const auto& [cell, half] : cells_) paint(cell, half);
  }

  [[nodiscard]] const Chain& chain() const { return chain_; }

 private:
  Chain chain_;
  std::vector<std::pair<std::size_t, Half>> cells_;
};

}  // namespace quoin::geometry
