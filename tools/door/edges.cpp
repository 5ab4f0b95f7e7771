// SPDX-License-Identifier: Apache-2.0
#include "tools/door/edges.hpp"

#include <algorithm>

#include "geometry/cell.hpp"

namespace quoin::door {
namespace {

using geometry::CellSide;
using geometry::Fill;
using geometry::Point;
using geometry::Section;

bool parallel(const Piece& one, const Piece& other) {
  constexpr double as_good_as_zero = 1e-9;
  return std::hypot(one.out().x - other.out().x, one.out().y - other.out().y) < as_good_as_zero;
}

void add(std::vector<Piece>& pieces, const Piece& piece) {
  const auto fits = [&](const Piece& other) {
    return other.beyond == piece.beyond && parallel(other, piece);
  };
  const auto before = std::find_if(pieces.begin(), pieces.end(), [&](const Piece& other) {
    return other.to == piece.from && fits(other);
  });
  if (before != pieces.end()) {
    before->to = piece.to;
    return;
  }
  const auto after = std::find_if(pieces.begin(), pieces.end(), [&](const Piece& other) {
    return other.from == piece.to && fits(other);
  });
  if (after != pieces.end()) {
    after->from = piece.from;
  } else {
    pieces.push_back(piece);
  }
}

/// The fill beyond a side of a cell, as its neighbour has it there; nothing beyond the section.
const Fill& fill_at(const Section& section, std::size_t i, std::size_t j, CellSide side) {
  static const Fill nothing;
  return i < section.columns() && j < section.rows() ? section.cell(i, j).at(side) : nothing;
}

}  // namespace

bool opposite(const Piece& one, const Piece& other) {
  return parallel(one, {other.to, other.from, {}});
}

std::vector<Piece> edges_of(const Section& section, const Fill& fill) {
  std::vector<Piece> pieces;
  const auto look = [&](const Fill& here, Point from, Point to, const Fill& beyond) {
    if (here == fill && beyond != fill) add(pieces, {from, to, beyond});
  };
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      const geometry::Cell& cell = section.cell(i, j);
      const Point sw{section.x[i], section.y[j]}, ne{section.x[i + 1], section.y[j + 1]};
      const Point se{ne.x, sw.y}, nw{sw.x, ne.y};
      const auto beyond = [&](std::size_t to_i, std::size_t to_j, CellSide side) {
        // Before the first column or row there is nothing: the position wraps beyond the last.
        return fill_at(section, to_i, to_j, side);
      };
      look(cell.at(CellSide::east), se, ne, beyond(i + 1, j, CellSide::west));
      look(cell.at(CellSide::west), nw, sw, beyond(i - 1, j, CellSide::east));
      look(cell.at(CellSide::north), ne, nw, beyond(i, j + 1, CellSide::south));
      look(cell.at(CellSide::south), sw, se, beyond(i, j - 1, CellSide::north));
      if (cell.split == geometry::Split::none) continue;
      const bool rising = cell.split == geometry::Split::rising;
      const Point left = rising ? sw : nw, right = rising ? ne : se;
      look(cell.below, right, left, cell.above);
      look(cell.above, left, right, cell.below);
    }
  }
  return pieces;
}

}  // namespace quoin::door
