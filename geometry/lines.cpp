// SPDX-License-Identifier: Apache-2.0
#include "geometry/lines.hpp"

namespace quoin::geometry {
namespace {

void add(Line& line, const Cell& cell, CellSide near, CellSide far, double length) {
  line.pieces.push_back({cell.at(near), length / 2});
  line.pieces.push_back({cell.at(far), length / 2});
}

}  // namespace

std::vector<Line> lines_of(const Section& section) {
  std::vector<Line> lines;
  for (std::size_t j = 0; j < section.rows(); ++j) {
    Line& line = lines.emplace_back();
    line.width = section.y[j + 1] - section.y[j];
    for (std::size_t i = 0; i < section.columns(); ++i)
      add(line, section.cell(i, j), CellSide::west, CellSide::east,
          section.x[i + 1] - section.x[i]);
  }
  for (std::size_t i = 0; i < section.columns(); ++i) {
    Line& line = lines.emplace_back();
    line.width = section.x[i + 1] - section.x[i];
    for (std::size_t j = 0; j < section.rows(); ++j)
      add(line, section.cell(i, j), CellSide::south, CellSide::north,
          section.y[j + 1] - section.y[j]);
  }
  return lines;
}

}  // namespace quoin::geometry
