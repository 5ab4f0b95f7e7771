// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>

#include "geometry/sheet.hpp"

namespace quoin::geometry {

/// How a cell is divided between two fills by a sloping edge.
enum class Split : std::uint8_t {
  none,     ///< one fill
  rising,   ///< from the lower left corner to the upper right one
  falling,  ///< from the upper left corner to the lower right one
};

enum class CellSide : std::uint8_t { west, east, south, north };

/// What one cell shows. Undivided cells have the same fill above and below.
struct Cell {
  Fill below;
  Fill above;
  Split split = Split::none;
  bool operator==(const Cell&) const = default;

  /// The fill that touches a side: of a divided cell the triangle with that side as a leg.
  [[nodiscard]] const Fill& at(CellSide side) const {
    switch (side) {
      case CellSide::south:
        return below;
      case CellSide::north:
        return above;
      case CellSide::west:
        return split == Split::rising ? above : below;
      case CellSide::east:
        return split == Split::rising ? below : above;
    }
    return below;
  }
};

[[nodiscard]] inline Cell undivided(Fill fill) { return {fill, fill, Split::none}; }

[[nodiscard]] inline bool is_solid(const Fill& fill) {
  return std::holds_alternative<RegionId>(fill);
}

/// Whether a cell holds any material.
[[nodiscard]] inline bool is_solid(const Cell& cell) {
  return is_solid(cell.below) || is_solid(cell.above);
}

}  // namespace quoin::geometry
