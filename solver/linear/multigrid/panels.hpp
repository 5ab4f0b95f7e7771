// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <vector>

#include "solver/linear/multigrid/arena.hpp"

namespace quoin::solver {

/// Columns stored side by side.
inline constexpr std::size_t lane_count = 16;

/// How the columns of a grid are dealt out.
/// The grid is cut into strips of neighbouring columns; a group is lane_count strips next to each
/// other, a panel one column of each strip of a group, stored together row by row. So the
/// neighbour to the east of a column stands in the next panel in the same lane; only behind the
/// last panel of its group it stands in the first one, one lane up. Panels of even number are the
/// even columns, and the grid of every second column has the same layout with half the panels.
/// Groups bound what is void: each has its own range of rows.
struct PanelLayout {
  std::size_t columns = 0;
  std::size_t rows = 0;
  std::size_t panels = 0;  ///< of one group; even, unless it is the only one
  std::size_t groups = 0;

  /// Values in one panel.
  [[nodiscard]] std::size_t panel_size() const { return rows * lane_count; }
  [[nodiscard]] std::size_t panel_count() const { return groups * panels; }

  /// Where panels are kept: one after the other, each group between two ghosts.
  [[nodiscard]] std::size_t slot_count() const { return groups * (panels + 2); }
  [[nodiscard]] std::size_t slot(std::size_t group, std::size_t panel) const {
    return group * (panels + 2) + 1 + panel;
  }
  [[nodiscard]] std::size_t slot_of(std::size_t column) const {
    return slot(column / (panels * lane_count), column % panels);
  }
  [[nodiscard]] std::size_t lane_of(std::size_t column) const {
    return column / panels % lane_count;
  }
};

/// A layout for so many columns that wastes little and stays good for several coarser grids.
[[nodiscard]] PanelLayout panel_layout(std::size_t columns, std::size_t rows);

/// The layout of every second column.
[[nodiscard]] PanelLayout halved(const PanelLayout& layout);

/// Half-open range of places in a panel, both multiples of lane_count: some of its rows.
struct Rows {
  std::size_t begin = 0;
  std::size_t end = 0;
  [[nodiscard]] bool empty() const { return begin == end; }
};

/// The rows of each group outside which nothing is active.
using ActiveRows = std::vector<Rows>;

/// Values on the nodes of a grid, panel by panel, in the memory of an arena. Begins with zeros.
template <typename T>
class Panels {
 public:
  Panels() = default;
  Panels(const PanelLayout& layout, Arena& arena);

  /// First value of the panel in a slot. Row j begins at j * lane_count.
  [[nodiscard]] T* operator[](std::size_t slot) { return first_ + slot * layout_.panel_size(); }
  [[nodiscard]] const T* operator[](std::size_t slot) const {
    return first_ + slot * layout_.panel_size();
  }

  /// Fills the ghost behind the last panel of a group with the neighbours to the east.
  void write_east_ghost(std::size_t group, const Rows& rows);
  /// Fills the ghost before the first panel of a group with the neighbours to the west.
  void write_west_ghost(std::size_t group, const Rows& rows);

 private:
  PanelLayout layout_;
  T* first_ = nullptr;
};

}  // namespace quoin::solver
