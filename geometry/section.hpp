// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <map>
#include <utility>
#include <vector>

#include "geometry/cell.hpp"
#include "geometry/seams.hpp"

namespace quoin::geometry {

/// Coordinates nearer than this are the same line, m: no sliver can arise.
inline constexpr double snap = 1e-5;

/// A sheet resolved: every edge of every patch on a line of the smallest tensor grid that holds it,
/// or on the diagonals of its cells. Shape: cells has columns() * rows() values, cell (i, j)
/// between x[i], x[i+1] and y[j], y[j+1] at index j * columns() + i.
struct Section {
  std::vector<double> x;  ///< ascending, m
  std::vector<double> y;  ///< ascending, m
  std::vector<Cell> cells;

  /// Membranes; those of a drawing without flaws lie between materials and end on lines.
  std::vector<Seam> seams;

  /// True length / drawn length of those sides and diagonals that stand for a sloping edge they do
  /// not lie on exactly; the lower crossing first. A surface there has its true length.
  std::map<std::pair<Crossing, Crossing>, double> lengthening;
  double deviation = 0.0;  ///< largest distance of a drawn edge from the true one, m

  [[nodiscard]] std::size_t columns() const { return x.empty() ? 0 : x.size() - 1; }
  [[nodiscard]] std::size_t rows() const { return y.empty() ? 0 : y.size() - 1; }
  [[nodiscard]] const Cell& cell(std::size_t i, std::size_t j) const {
    return cells[j * columns() + i];
  }
};

/// A sheet on all its lines, nothing joined and nothing cut away.
[[nodiscard]] Section painted(const Sheet& sheet);

/// The section a sheet shows. Lines are snapped to each other, then to multiples of `snap`; rows
/// and columns that hold nothing but spaces and gaps beyond the material are cut away.
[[nodiscard]] Section section_of(const Sheet& sheet);

/// The same section with lines through some places, so that these are nodes of every mesh on it.
/// Places that lie on a line already, or in a strip that a sloping edge crosses, or outside, get
/// none.
[[nodiscard]] Section with_lines_through(const Section& section, const std::vector<Point>& places);

}  // namespace quoin::geometry
