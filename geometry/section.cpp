// SPDX-License-Identifier: Apache-2.0
#include "geometry/section.hpp"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <functional>

#include "geometry/paint.hpp"

namespace quoin::geometry {
namespace {

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
  thin.deviation = full.deviation;
  thin.seams = full.seams;
  for (const std::size_t i : columns) thin.x.push_back(full.x[i]);
  for (const std::size_t j : rows) thin.y.push_back(full.y[j]);
  for (std::size_t j = 0; j + 1 < rows.size(); ++j) {
    for (std::size_t i = 0; i + 1 < columns.size(); ++i) {
      thin.cells.push_back(full.cell(columns[i], rows[j]));
    }
  }
  for (const auto& [stretch, factor] : full.lengthening) {
    const auto at = [](const std::vector<std::size_t>& kept, std::size_t line) {
      return std::lower_bound(kept.begin(), kept.end(), line) - kept.begin();
    };
    const auto moved = [&](Crossing c) {
      return Crossing{static_cast<std::size_t>(at(columns, c.i)),
                      static_cast<std::size_t>(at(rows, c.j))};
    };
    thin.lengthening[{moved(stretch.first), moved(stretch.second)}] = factor;
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
  if (!full.lengthening.empty()) return full;  // its stretches lie between neighbouring lines
  const auto differ = [](const Cell& one, const Cell& other) {
    return one != other || one.split != Split::none;
  };
  const auto holds_membrane = [&](double line, bool upright) {
    return std::any_of(full.seams.begin(), full.seams.end(), [&](const Seam& seam) {
      return seam.upright == upright ? seam.at == line : seam.from == line || seam.to == line;
    });
  };
  const auto changes_across_x = [&](std::size_t i) {
    if (i == 0 || i + 1 == full.x.size() || holds_membrane(full.x[i], true)) return true;
    for (std::size_t j = 0; j < full.rows(); ++j) {
      if (differ(full.cell(i - 1, j), full.cell(i, j))) return true;
    }
    return false;
  };
  const auto changes_across_y = [&](std::size_t j) {
    if (j == 0 || j + 1 == full.y.size() || holds_membrane(full.y[j], false)) return true;
    for (std::size_t i = 0; i < full.columns(); ++i) {
      if (differ(full.cell(i, j - 1), full.cell(i, j))) return true;
    }
    return false;
  };
  return thinned(full, changes_across_x, changes_across_y);
}

/// Paints a cell or a half of it. Of a cell already divided the other way the lower half stays as
/// the rest.
void paint_over(Cell& cell, Stencil::Half half, const Patch& patch) {
  const auto paint = [&](Fill& fill) {
    if (!patch.only_over || fill == Fill{*patch.only_over}) fill = patch.fill;
  };
  if (half.split == Split::none) {
    paint(cell.below);
    paint(cell.above);
  } else {
    if (cell.split != half.split) cell = {cell.below, cell.below, half.split};
    paint(half.below ? cell.below : cell.above);
  }
  if (cell.below == cell.above) cell.split = Split::none;
}

/// Which triangles of each cell a patch has painted: 1 the lower, 2 the upper.
using Painted = std::vector<std::uint8_t>;

/// Takes away the membranes on both sides of which a patch was painted.
void cover(SeamPieces& pieces, const Section& section, const Painted& painted) {
  const auto is_painted = [&](std::size_t i, std::size_t j, CellSide side) {
    const Cell& cell = section.cell(i, j);
    const std::uint8_t parts = painted[j * section.columns() + i];
    if (cell.split == Split::none) return parts != 0;
    const bool below = side == CellSide::south ||
                       (side == CellSide::east && cell.split == Split::rising) ||
                       (side == CellSide::west && cell.split == Split::falling);
    return (parts & (below ? 1 : 2)) != 0;
  };
  std::erase_if(pieces, [&](const auto& piece) {
    const auto& [a, b] = piece.first;
    if (a.i == b.i) {
      return a.i > 0 && a.i < section.columns() && is_painted(a.i - 1, a.j, CellSide::east) &&
             is_painted(a.i, a.j, CellSide::west);
    }
    return a.j > 0 && a.j < section.rows() && is_painted(a.i, a.j - 1, CellSide::north) &&
           is_painted(a.i, a.j, CellSide::south);
  });
}

void note_deviation(Section& section, const Chain& chain) {
  if (chain.deviation <= 3 * snap) return;  // rounding of coordinates
  section.deviation = std::max(section.deviation, chain.deviation);
  for (const Stretch& stretch : chain.stretches) {
    section.lengthening[std::minmax(stretch.from, stretch.to)] = stretch.lengthening;
  }
}

}  // namespace

Section painted(const Sheet& sheet) {
  const Lines lines = lines_of(sheet);
  if (lines.x.size() < 2 || lines.y.size() < 2) return {};
  Section section;
  section.x = lines.x;
  section.y = lines.y;
  section.cells.assign(section.columns() * section.rows(), undivided(std::monostate{}));
  SeamPieces pieces;
  for (const Patch& patch : sheet) {
    if (const MembraneId* membrane = membrane_of(patch)) {
      draw_membrane(*membrane, patch.outline, lines, pieces);
      continue;
    }
    const Stencil stencil(patch.outline, lines);
    Painted parts(pieces.empty() ? 0 : section.cells.size(), 0);
    stencil.paint([&](std::size_t index, Stencil::Half half) {
      paint_over(section.cells[index], half, patch);
      if (parts.empty()) return;
      parts[index] |= half.split == Split::none ? 3 : half.below ? 1 : 2;
    });
    // What a band wets is where it was.
    if (!parts.empty() && !patch.only_over) cover(pieces, section, parts);
    note_deviation(section, stencil.chain());
  }
  section.seams = seams_of(pieces, lines);
  return section;
}

Section section_of(const Sheet& sheet) {
  const Section section = painted(sheet);
  return section.cells.empty() ? section : joined(trimmed(section));
}

Section with_lines_through(const Section& section, const std::vector<Point>& places) {
  if (!section.lengthening.empty()) return section;  // its stretches lie between neighbouring lines
  std::vector<char> crossed_column(section.columns());
  std::vector<char> crossed_row(section.rows());
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      if (section.cell(i, j).split != Split::none) crossed_column[i] = crossed_row[j] = 1;
    }
  }
  // The lines of one axis with the new ones, and of each strip between them the one it was part of.
  const auto with = [](const std::vector<double>& lines, const std::vector<char>& crossed,
                       const std::vector<double>& wanted, std::vector<std::size_t>& origin) {
    std::vector<double> all;
    for (std::size_t k = 0; k + 1 < lines.size(); ++k) {
      all.push_back(lines[k]);
      origin.push_back(k);
      if (crossed[k] != 0) continue;
      for (const double at : wanted) {
        if (at < all.back() + snap || at > lines[k + 1] - snap) continue;
        all.push_back(at);
        origin.push_back(k);
      }
    }
    all.push_back(lines.back());
    return all;
  };
  const auto sorted = [&places](double Point::*axis) {
    std::vector<double> values;
    for (const Point place : places) values.push_back(place.*axis);
    std::sort(values.begin(), values.end());
    return values;
  };
  Section result = section;
  std::vector<std::size_t> column;
  std::vector<std::size_t> row;
  result.x = with(section.x, crossed_column, sorted(&Point::x), column);
  result.y = with(section.y, crossed_row, sorted(&Point::y), row);
  result.cells.clear();
  for (const std::size_t j : row) {
    for (const std::size_t i : column) result.cells.push_back(section.cell(i, j));
  }
  return result;
}

}  // namespace quoin::geometry
