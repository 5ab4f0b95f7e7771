// SPDX-License-Identifier: Apache-2.0
#include "geometry/lines.hpp"

namespace quoin::geometry {
namespace {

/// The line through the middle of a row or column. Shape: `at` has one value more than there are
/// cells; `cell(k)` is the one between values k and k + 1.
template <class CellAt>
Line line_through(double width, const std::vector<double>& at, CellSide near, CellSide far,
                  const CellAt& cell) {
  Line line{{}, width};
  for (std::size_t k = 0; k + 1 < at.size(); ++k) {
    const double half = (at[k + 1] - at[k]) / 2;
    line.pieces.push_back({cell(k).at(near), half});
    line.pieces.push_back({cell(k).at(far), half});
  }
  return line;
}

}  // namespace

std::vector<Line> lines_of(const Section& section) {
  std::vector<Line> lines;
  for (std::size_t j = 0; j < section.rows(); ++j)
    lines.push_back(line_through(section.y[j + 1] - section.y[j], section.x, CellSide::west,
                                 CellSide::east,
                                 [&](std::size_t i) -> const Cell& { return section.cell(i, j); }));
  for (std::size_t i = 0; i < section.columns(); ++i)
    lines.push_back(line_through(section.x[i + 1] - section.x[i], section.y, CellSide::south,
                                 CellSide::north,
                                 [&](std::size_t j) -> const Cell& { return section.cell(i, j); }));
  return lines;
}

}  // namespace quoin::geometry
