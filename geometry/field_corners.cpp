// SPDX-License-Identifier: Apache-2.0
#include "geometry/field_corners.hpp"

#include <algorithm>
#include <array>

#include "geometry/fans.hpp"

namespace quoin::geometry {
namespace {

bool is_space(const Fill& fill) { return std::holds_alternative<SpaceId>(fill); }

/// Whether one straight sloping edge runs through the point, with the same on either side of it all
/// along.
bool is_straight_slope(const Quarters& q) {
  const auto& [sw, se, ne, nw] = q;
  const bool rising = sw.split == Split::rising && sw == ne && se == undivided(sw.below) &&
                      nw == undivided(sw.above);
  const bool falling = nw.split == Split::falling && nw == se && sw == undivided(nw.below) &&
                       ne == undivided(nw.above);
  return rising || falling;
}

/// Whether temperature or flux is not smooth at a point: everywhere but on straight interfaces, at
/// square ends of one material, and where an interface runs square into a cut plane.
bool is_corner_of_field(const Quarters& cells) {
  if (std::any_of(cells.begin(), cells.end(),
                  [](const Cell& c) { return c.split != Split::none; })) {
    return !is_straight_slope(cells);
  }
  const std::array<Fill, 4> q = {cells[0].below, cells[1].below, cells[2].below, cells[3].below};
  const auto solid = [](const Fill& fill) { return is_solid(fill); };
  const auto solids = std::count_if(q.begin(), q.end(), solid);
  if (solids == 0) return false;
  for (const std::size_t k : {0u, 1u}) {  // a straight line through the point?
    if (q[k] == q[k + 1] && q[(k + 2) % 4] == q[(k + 3) % 4]) return false;
  }
  if (solids == 1) {  // square end: smooth unless two different spaces meet there
    const auto only = static_cast<std::size_t>(std::find_if(q.begin(), q.end(), solid) - q.begin());
    const Fill& one = q[(only + 1) % 4];
    const Fill& other = q[(only + 3) % 4];
    return is_space(one) && is_space(other) && one != other;
  }
  if (solids == 2) {
    for (std::size_t k = 0; k < 4; ++k) {
      const bool beside = is_solid(q[k]) && is_solid(q[(k + 1) % 4]);
      const bool cut = !is_space(q[(k + 2) % 4]) && !is_space(q[(k + 3) % 4]);
      if (beside && cut) return false;  // an interface meeting a cut plane at a right angle
    }
  }
  return true;
}

}  // namespace

FieldCorners field_corners(const Section& section) {
  FieldCorners corners{std::vector<char>(section.x.size()), std::vector<char>(section.y.size())};
  for (std::size_t j = 0; j < section.y.size(); ++j) {
    for (std::size_t i = 0; i < section.x.size(); ++i) {
      if (is_corner_of_field(quarters(section, i, j))) corners.on_x[i] = corners.on_y[j] = 1;
    }
  }
  // The pressure of vapour is not smooth at the end of a membrane, nor where it turns.
  for (const Seam& seam : section.seams) {
    for (const double end : {seam.from, seam.to}) {
      const Crossing at = crossing_at({section.x, section.y},
                                      seam.upright ? Point{seam.at, end} : Point{end, seam.at});
      const Quarters around = quarters(section, at.i, at.j);
      if (std::all_of(around.begin(), around.end(), [](const Cell& c) { return is_solid(c); }))
        corners.on_x[at.i] = corners.on_y[at.j] = 1;
    }
  }
  return corners;
}

}  // namespace quoin::geometry
