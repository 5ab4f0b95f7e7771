// SPDX-License-Identifier: Apache-2.0
#include "geometry/section.hpp"

#include <algorithm>
#include <functional>

#include "geometry/paint.hpp"

namespace quoin::geometry {
namespace {

Cell undivided(Fill fill) { return {fill, fill, Split::none}; }

bool is_solid(const Cell& cell) {
  return std::holds_alternative<RegionId>(cell.below) ||
         std::holds_alternative<RegionId>(cell.above);
}

using KeepLine = std::function<bool(std::size_t)>;

/// The section without the inner lines that `keep` refuses, and without the outermost strips as far
/// as `keep` refuses the first and last lines. The cells between kept lines must be alike.
Section thinned(const Section& full, const KeepLine& keep_x, const KeepLine& keep_y) {
  std::vector<std::size_t> columns;
  std::vector<std::size_t> rows;
  for (std::size_t i = 0; i < full.x.size(); ++i) {
    if (keep_x(i)) columns.push_back(i);
  }
  for (std::size_t j = 0; j < full.y.size(); ++j) {
    if (keep_y(j)) rows.push_back(j);
  }
  Section thin;
  for (const std::size_t i : columns) thin.x.push_back(full.x[i]);
  for (const std::size_t j : rows) thin.y.push_back(full.y[j]);
  for (std::size_t j = 0; j + 1 < rows.size(); ++j) {
    for (std::size_t i = 0; i + 1 < columns.size(); ++i) {
      thin.cells.push_back(full.cell(columns[i], rows[j]));
    }
  }
  return thin;
}

/// Without what lies more than one strip beyond the material.
Section trimmed(const Section& full) {
  std::size_t west = full.columns(), east = 0, south = full.rows(), north = 0;
  for (std::size_t j = 0; j < full.rows(); ++j) {
    for (std::size_t i = 0; i < full.columns(); ++i) {
      if (!is_solid(full.cell(i, j))) continue;
      west = std::min(west, i);
      east = std::max(east, i);
      south = std::min(south, j);
      north = std::max(north, j);
    }
  }
  if (west > east) return full;  // no material at all: a flaw, told elsewhere
  return thinned(
      full, [&](std::size_t i) { return i + 1 >= west && i <= east + 2; },
      [&](std::size_t j) { return j + 1 >= south && j <= north + 2; });
}

/// Without lines across which nothing changes: painting a wall in two strokes is painting it in
/// one.
Section joined(const Section& full) {
  const auto changes_across_x = [&](std::size_t i) {
    if (i == 0 || i + 1 == full.x.size()) return true;
    for (std::size_t j = 0; j < full.rows(); ++j) {
      if (full.cell(i - 1, j) != full.cell(i, j)) return true;
    }
    return false;
  };
  const auto changes_across_y = [&](std::size_t j) {
    if (j == 0 || j + 1 == full.y.size()) return true;
    for (std::size_t i = 0; i < full.columns(); ++i) {
      if (full.cell(i, j - 1) != full.cell(i, j)) return true;
    }
    return false;
  };
  return thinned(full, changes_across_x, changes_across_y);
}

}  // namespace

Section section_of(const Sheet& sheet) {
  std::vector<double> xs;
  std::vector<double> ys;
  for (const Patch& patch : sheet) {
    for (const Point corner : patch.outline) {
      xs.push_back(corner.x);
      ys.push_back(corner.y);
    }
  }
  Section section{snapped_lines(std::move(xs)), snapped_lines(std::move(ys)), {}};
  if (section.x.size() < 2 || section.y.size() < 2) return {};
  section.cells.assign(section.columns() * section.rows(), undivided(std::monostate{}));
  for (const Patch& patch : sheet) {
    for_each_cell_in(patch.outline, section.x, section.y, [&](std::size_t index) {
      Cell& cell = section.cells[index];
      if (!patch.only_over || cell.below == Fill{*patch.only_over}) cell = undivided(patch.fill);
    });
  }
  return joined(trimmed(section));
}

}  // namespace quoin::geometry
