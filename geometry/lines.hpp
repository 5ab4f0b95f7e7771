// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::geometry {

/// A piece of a straight line through a section.
struct LinePiece {
  Fill fill;
  double length = 0.0;  ///< m
};

/// What a straight line through the middle of a row or column meets, one end first. A divided cell
/// shows both its fills.
struct Line {
  std::vector<LinePiece> pieces;
  double width = 0.0;  ///< of the row or column, m
};

/// The rows of a section, then its columns.
[[nodiscard]] std::vector<Line> lines_of(const Section& section);

/// What `find(pieces)`, an optional, gives first, along each line from one end, then from the
/// other; nothing where it gives nothing.
template <class Find>
[[nodiscard]] auto first_found(const Section& section, Find find)
    -> decltype(find(std::vector<LinePiece>())) {
  for (Line& line : lines_of(section)) {
    if (auto found = find(line.pieces)) return found;
    std::reverse(line.pieces.begin(), line.pieces.end());
    if (auto found = find(line.pieces)) return found;
  }
  return {};
}

}  // namespace quoin::geometry
