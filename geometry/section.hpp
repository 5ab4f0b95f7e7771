// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <vector>

#include "geometry/sheet.hpp"

namespace quoin::geometry {

/// Coordinates nearer than this are the same line, m: no sliver can arise.
inline constexpr double snap = 1e-5;

/// How a cell is divided between two fills by a sloping edge.
enum class Split : std::uint8_t {
  none,     ///< one fill
  rising,   ///< from the lower left corner to the upper right one
  falling,  ///< from the upper left corner to the lower right one
};

/// What one cell shows. Undivided cells have the same fill above and below.
struct Cell {
  Fill below;
  Fill above;
  Split split = Split::none;
  bool operator==(const Cell&) const = default;
};

/// A sheet resolved: every edge of every patch on a line of the smallest tensor grid that holds it.
/// Shape: cells has columns() * rows() values, cell (i, j) between x[i], x[i+1] and y[j], y[j+1] at
/// index j * columns() + i.
struct Section {
  std::vector<double> x;  ///< ascending, m
  std::vector<double> y;  ///< ascending, m
  std::vector<Cell> cells;

  [[nodiscard]] std::size_t columns() const { return x.empty() ? 0 : x.size() - 1; }
  [[nodiscard]] std::size_t rows() const { return y.empty() ? 0 : y.size() - 1; }
  [[nodiscard]] const Cell& cell(std::size_t i, std::size_t j) const {
    return cells[j * columns() + i];
  }
};

/// The section a sheet shows. Lines are snapped to each other, then to multiples of `snap`; rows
/// and columns that hold nothing but spaces and gaps beyond the material are cut away.
[[nodiscard]] Section section_of(const Sheet& sheet);

}  // namespace quoin::geometry
