// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <map>
#include <utility>
#include <vector>

#include "geometry/slopes.hpp"

namespace quoin::geometry {

/// A straight piece of membrane on a line of a section, as long as one membrane runs on.
struct Seam {
  MembraneId membrane;
  bool upright = true;  ///< on x = at, between two y; else on y = at, between two x
  double at = 0.0;      ///< m
  double from = 0.0;    ///< m; from < to
  double to = 0.0;
};

/// Membranes between neighbouring crossings of some lines, the lower crossing first.
using SeamPieces = std::map<std::pair<Crossing, Crossing>, MembraneId>;

/// Draws a membrane along lines. Stretches along neither axis are left out: see `flaws`.
void draw_membrane(MembraneId membrane, const Outline& line, const Lines& lines,
                   SeamPieces& pieces);

/// The pieces joined to seams: upright ones first, from left to right and from below to above.
[[nodiscard]] std::vector<Seam> seams_of(const SeamPieces& pieces, const Lines& lines);

}  // namespace quoin::geometry
