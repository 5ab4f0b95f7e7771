// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <memory>

namespace quoin::solver {

/// Columns stored side by side.
inline constexpr std::size_t lane_count = 16;

/// How the columns of a grid are dealt out to panels, a panel being lane_count columns stored
/// together row by row.
/// Lane w holds the columns [w * panels, (w + 1) * panels), one in each panel. So the neighbour to
/// the east of a column stands in the next panel in the same lane; only behind the last panel it
/// stands in the first one, one lane up. Panels of even number are the even columns, and the grid
/// of every second column has the same layout with half the panels.
struct PanelLayout {
  std::size_t columns = 0;
  std::size_t rows = 0;
  std::size_t panels = 0;  ///< even, unless there is but one column

  /// Values in one panel.
  [[nodiscard]] std::size_t panel_size() const { return rows * lane_count; }
  [[nodiscard]] std::size_t panel_of(std::size_t column) const { return column % panels; }
  [[nodiscard]] std::size_t lane_of(std::size_t column) const { return column / panels; }
};

/// The layout for so many columns: few panels, but so that several coarser grids keep the layout.
[[nodiscard]] PanelLayout panel_layout(std::size_t columns, std::size_t rows);

/// The layout of every second column.
[[nodiscard]] PanelLayout halved(const PanelLayout& layout);

/// A panel number: the ghost before the first panel.
inline constexpr std::size_t before_first = static_cast<std::size_t>(-1);

/// Values on the nodes of a grid, panel by panel, with a ghost panel at either end. Begins with
/// zeros.
template <typename T>
class Panels {
 public:
  Panels() = default;
  explicit Panels(const PanelLayout& layout);

  /// First value of panel q, from before_first to the number of panels. Row j begins at
  /// j * lane_count.
  [[nodiscard]] T* panel(std::size_t q) { return first_ + (q + 1) * size_; }
  [[nodiscard]] const T* panel(std::size_t q) const { return first_ + (q + 1) * size_; }

  /// Fills the ghost behind the last panel from the first panel.
  void write_east_ghost();
  /// Fills the ghost before the first panel from the last panel.
  void write_west_ghost();

 private:
  struct Release {
    void operator()(void* memory) const;
  };
  std::size_t size_ = 0;    // of one panel
  std::size_t panels_ = 0;  // without the ghosts
  std::unique_ptr<void, Release> memory_;
  T* first_ = nullptr;
};

}  // namespace quoin::solver
