// SPDX-License-Identifier: Apache-2.0
#include "geometry/mesh.hpp"

#include <algorithm>
#include <cmath>
#include <stdexcept>

#include "geometry/fans.hpp"

namespace quoin::geometry {
namespace {

/// Where in a strip of unit length a line lies, t = 0 at its start and 1 at its end.
double graded(double t, const Strip& strip) {
  if (strip.finer_at_start && strip.finer_at_end) {
    return t <= 0.5 ? std::pow(2 * t, grading_exponent) / 2
                    : 1 - std::pow(2 * (1 - t), grading_exponent) / 2;
  }
  if (strip.finer_at_start) return std::pow(t, grading_exponent);
  if (strip.finer_at_end) return 1 - std::pow(1 - t, grading_exponent);
  return t;
}

/// The nodes along one axis, and the strip of each cell.
void cut(const std::vector<double>& lines, const std::vector<Strip>& strips,
         std::vector<double>& nodes, std::vector<std::uint32_t>& strip_of_cell) {
  nodes.push_back(lines.front());
  for (std::size_t s = 0; s < strips.size(); ++s) {
    const double length = lines[s + 1] - lines[s];
    for (const double t : strips[s].cuts) nodes.push_back(lines[s] + length * graded(t, strips[s]));
    nodes.push_back(lines[s + 1]);
    strip_of_cell.insert(strip_of_cell.end(), strips[s].cells(), static_cast<std::uint32_t>(s));
  }
}

/// Part of a divided cell of the section.
Cell part_of(const Cell& whole, std::size_t column, std::size_t row, std::size_t cells) {
  const std::size_t diagonal = whole.split == Split::rising ? column : cells - 1 - column;
  if (row == diagonal) return whole;
  return undivided(row < diagonal ? whole.below : whole.above);
}

/// The number of each cell within its strip.
std::vector<std::size_t> numbers_in_strip(const std::vector<std::uint32_t>& strip_of_cell) {
  std::vector<std::size_t> numbers(strip_of_cell.size(), 0);
  for (std::size_t k = 1; k < numbers.size(); ++k) {
    if (strip_of_cell[k] == strip_of_cell[k - 1]) numbers[k] = numbers[k - 1] + 1;
  }
  return numbers;
}

std::vector<Cell> divided_cells(const Mesh& mesh, const Subdivision& subdivision) {
  const std::vector<std::size_t> column = numbers_in_strip(mesh.section_column);
  const std::vector<std::size_t> row = numbers_in_strip(mesh.section_row);
  std::vector<Cell> cells;
  cells.reserve(mesh.columns() * mesh.rows());
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const Cell& whole = mesh.section.cell(mesh.section_column[i], mesh.section_row[j]);
      cells.push_back(whole.split == Split::none
                          ? whole
                          : part_of(whole, column[i], row[j],
                                    subdivision.columns[mesh.section_column[i]].cells()));
    }
  }
  return cells;
}

/// Whether two strips are cut alike, so that a sloping edge runs along diagonals of their cells.
bool are_cut_alike(const Strip& one, const Strip& other) {
  return one.cuts == other.cuts && one.finer_at_start == other.finer_at_start &&
         one.finer_at_end == other.finer_at_end;
}

/// Throws: invalid_argument where a sloping edge would leave the diagonals.
void refuse_unequal_cuts(const Section& section, const Subdivision& subdivision) {
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      if (section.cell(i, j).split == Split::none ||
          are_cut_alike(subdivision.columns[i], subdivision.rows[j]))
        continue;
      throw std::invalid_argument("strips that a sloping edge crosses are cut unequally");
    }
  }
}

/// Gives fans of material that touch in one point alone nodes of their own; the widest keeps that
/// of the grid.
void part_fans(const Subdivision& subdivision, Mesh& mesh) {
  const auto starts = [](const std::vector<Strip>& strips) {
    std::vector<std::size_t> at = {0};
    for (const Strip& strip : strips) at.push_back(at.back() + strip.cells());
    return at;
  };
  const std::vector<std::size_t> column = starts(subdivision.columns),
                                 row = starts(subdivision.rows);
  for (std::size_t j = 0; j < row.size(); ++j) {
    for (std::size_t i = 0; i < column.size(); ++i) {
      const Fans fans(quarters(mesh.section, i, j));
      if (fans.eighths.size() < 2) continue;
      const std::size_t at = mesh.node(column[i], row[j]);
      const auto widest = std::max_element(fans.eighths.begin(), fans.eighths.end());
      std::vector<std::size_t> node(fans.eighths.size() + 1, at);
      for (std::size_t k = 0; k < fans.eighths.size(); ++k) {
        if (fans.eighths.begin() + static_cast<std::ptrdiff_t>(k) == widest) continue;
        node[k + 1] = mesh.nodes();
        mesh.further.push_back(at);
      }
      const auto of_quarter = [&](std::size_t first) {
        return node[std::max(fans.fan[first], fans.fan[first + 1])];
      };
      mesh.touching[at] = {of_quarter(4), of_quarter(6), of_quarter(2), of_quarter(0)};
    }
  }
}

bool has_slopes(const Section& section) {
  return std::any_of(section.cells.begin(), section.cells.end(),
                     [](const Cell& cell) { return cell.split != Split::none; });
}

}  // namespace

Mesh mesh_of(const Section& section, const Subdivision& subdivision) {
  refuse_unequal_cuts(section, subdivision);
  Mesh mesh{section, {}, {}, {}, {}, {}};
  cut(section.x, subdivision.columns, mesh.x, mesh.section_column);
  cut(section.y, subdivision.rows, mesh.y, mesh.section_row);
  if (has_slopes(section)) mesh.cells = divided_cells(mesh, subdivision);
  part_fans(subdivision, mesh);
  return mesh;
}

}  // namespace quoin::geometry
