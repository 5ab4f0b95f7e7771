// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <cstddef>
#include <iterator>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::tools {

/// The lines of two axes within what both hold.
[[nodiscard]] inline std::vector<double> common_lines(const std::vector<double>& one,
                                                      const std::vector<double>& other) {
  std::vector<double> all;
  std::set_union(one.begin(), one.end(), other.begin(), other.end(), std::back_inserter(all));
  const double from = std::max(one.front(), other.front());
  const double to = std::min(one.back(), other.back());
  std::erase_if(all, [&](double line) { return line < from || line > to; });
  return all;
}

/// The cells of one axis that hold the cells between some of its lines and others.
[[nodiscard]] inline std::vector<std::size_t> cells_between(const std::vector<double>& lines,
                                                            const std::vector<double>& all) {
  std::vector<std::size_t> cells;
  for (std::size_t k = 0, cell = 0; k + 1 < all.size(); ++k) {
    while (cell + 2 < lines.size() && lines[cell + 1] <= all[k]) ++cell;
    cells.push_back(cell);
  }
  return cells;
}

/// Whether `holds(cell of one, cell of the other)` wherever two sections overlap; true where they
/// do not, or one of them has no cells.
template <class Holds>
[[nodiscard]] bool everywhere(const geometry::Section& one, const geometry::Section& other,
                              Holds holds) {
  if (one.cells.empty() || other.cells.empty()) return true;
  const std::vector<double> x = common_lines(one.x, other.x), y = common_lines(one.y, other.y);
  const std::vector<std::size_t> one_x = cells_between(one.x, x), one_y = cells_between(one.y, y);
  const std::vector<std::size_t> other_x = cells_between(other.x, x),
                                 other_y = cells_between(other.y, y);
  for (std::size_t j = 0; j < one_y.size(); ++j) {
    for (std::size_t i = 0; i < one_x.size(); ++i) {
      if (!holds(one.cell(one_x[i], one_y[j]), other.cell(other_x[i], other_y[j]))) return false;
    }
  }
  return true;
}

}  // namespace quoin::tools
