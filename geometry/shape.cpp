// SPDX-License-Identifier: Apache-2.0
#include "geometry/shape.hpp"

#include <algorithm>
#include <utility>
#include <vector>

namespace quoin::geometry {
namespace {

/// Counts the parts of a region by walking over each from side to side of its cells.
class PieceCount {
 public:
  PieceCount(const Section& section, Fill fill)
      : section_(section), fill_(fill), seen_(section.cells.size()) {}

  [[nodiscard]] std::size_t pieces() {
    std::size_t count = 0;
    for (std::size_t j = 0; j < section_.rows(); ++j) {
      for (std::size_t i = 0; i < section_.columns(); ++i) {
        if (is_new(i, j)) {
          walk(i, j);
          ++count;
        }
      }
    }
    return count;
  }

 private:
  [[nodiscard]] bool is_new(std::size_t i, std::size_t j) const {
    const Cell& cell = section_.cell(i, j);
    return (cell.below == fill_ || cell.above == fill_) && seen_[j * section_.columns() + i] == 0;
  }

  void walk(std::size_t i, std::size_t j) {
    std::vector<std::pair<std::size_t, std::size_t>> open;
    const auto reach = [&](std::size_t column, std::size_t row, CellSide side) {
      if (!is_new(column, row) || section_.cell(column, row).at(side) != fill_) return;
      seen_[row * section_.columns() + column] = 1;
      open.emplace_back(column, row);
    };
    seen_[j * section_.columns() + i] = 1;
    open.emplace_back(i, j);
    while (!open.empty()) {
      const auto [column, row] = open.back();
      open.pop_back();
      const Cell& cell = section_.cell(column, row);
      const auto leaves = [&](CellSide side) { return cell.at(side) == fill_; };
      if (column > 0 && leaves(CellSide::west)) reach(column - 1, row, CellSide::east);
      if (column + 1 < section_.columns() && leaves(CellSide::east))
        reach(column + 1, row, CellSide::west);
      if (row > 0 && leaves(CellSide::south)) reach(column, row - 1, CellSide::north);
      if (row + 1 < section_.rows() && leaves(CellSide::north))
        reach(column, row + 1, CellSide::south);
    }
  }

  const Section& section_;
  Fill fill_;
  std::vector<char> seen_;
};

}  // namespace

Shape shape_of(const Section& section, RegionId region) {
  const Fill fill{region};
  Shape shape;
  std::size_t west = section.columns(), east = 0, south = section.rows(), north = 0;
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      const Cell& cell = section.cell(i, j);
      const int halves = int{cell.below == fill} + int{cell.above == fill};
      if (halves == 0) continue;
      const double whole = (section.x[i + 1] - section.x[i]) * (section.y[j + 1] - section.y[j]);
      shape.area += whole * halves / 2;
      west = std::min(west, i);
      east = std::max(east, i + 1);
      south = std::min(south, j);
      north = std::max(north, j + 1);
    }
  }
  if (west > east) return shape;
  shape.width = section.x[east] - section.x[west];
  shape.height = section.y[north] - section.y[south];
  shape.pieces = PieceCount(section, fill).pieces();
  return shape;
}

}  // namespace quoin::geometry
