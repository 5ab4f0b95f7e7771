// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <utility>
#include <vector>

#include "geometry/sheet.hpp"

namespace quoin::geometry {

/// The lines of a tensor grid, ascending, m.
struct Lines {
  std::vector<double> x;
  std::vector<double> y;
};

/// Where two lines cross: x[i], y[j].
struct Crossing {
  std::size_t i = 0;
  std::size_t j = 0;
  auto operator<=>(const Crossing&) const = default;
};

/// A stretch of an outline along one side or one diagonal of a cell.
struct Stretch {
  Crossing from;
  Crossing to;
  double lengthening = 1.0;  ///< true length of the outline there / length of the stretch
};

/// An outline drawn along sides and diagonals of cells only.
struct Chain {
  std::vector<Crossing> corners;   ///< closed: the last is joined to the first
  std::vector<Stretch> stretches;  ///< of its sloping edges
  double deviation = 0.0;          ///< largest distance from the outline it stands for, m
};

/// Adds lines so that sloping edges run from corner to corner of cells: where an edge crosses a
/// line of one axis there shall be a line of the other. Parallel edges close after finitely many
/// lines; where edges do not, lines end at a spacing of `closest_lines` or after `most_lines`, and
/// chains deviate from their outlines by up to half a cell.
void add_lines_for_slopes(const std::vector<Outline>& outlines, Lines& lines);

inline constexpr double closest_lines = 1e-3;   // m
inline constexpr std::size_t most_lines = 100;  // added to one axis

/// The crossing nearest to a place.
[[nodiscard]] Crossing crossing_at(const Lines& lines, Point place);

/// The nearest chain to an outline whose corners lie on lines.
[[nodiscard]] Chain chain_of(const Outline& outline, const Lines& lines);

}  // namespace quoin::geometry
