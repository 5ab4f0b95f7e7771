// SPDX-License-Identifier: Apache-2.0
#include "geometry/seams.hpp"

#include <algorithm>

namespace quoin::geometry {

void draw_membrane(MembraneId membrane, const Outline& line, const Lines& lines,
                   SeamPieces& pieces) {
  for (std::size_t k = 0; k + 1 < line.size(); ++k) {
    const Crossing a = crossing_at(lines, line[k]), b = crossing_at(lines, line[k + 1]);
    if (a.i != b.i && a.j != b.j) continue;
    const auto [first, last] = std::minmax(a, b);
    for (Crossing at = first; at != last;) {
      const Crossing next = a.i == b.i ? Crossing{at.i, at.j + 1} : Crossing{at.i + 1, at.j};
      pieces[{at, next}] = membrane;
      at = next;
    }
  }
}

std::vector<Seam> seams_of(const SeamPieces& pieces, const Lines& lines) {
  std::vector<Seam> upright, level;
  const auto extend = [](std::vector<Seam>& seams, const Seam& piece) {
    for (Seam& known : seams) {
      if (known.membrane != piece.membrane || known.at != piece.at || known.to != piece.from)
        continue;
      known.to = piece.to;
      return;
    }
    seams.push_back(piece);
  };
  for (const auto& [ends, membrane] : pieces) {
    const auto& [a, b] = ends;
    if (a.i == b.i) {
      extend(upright, {membrane, true, lines.x[a.i], lines.y[a.j], lines.y[b.j]});
    } else {
      extend(level, {membrane, false, lines.y[a.j], lines.x[a.i], lines.x[b.i]});
    }
  }
  upright.insert(upright.end(), level.begin(), level.end());
  return upright;
}

}  // namespace quoin::geometry
