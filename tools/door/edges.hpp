// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <vector>

#include "geometry/section.hpp"

namespace quoin::door {

/// A straight piece of the edge of what shows a fill, longer than nothing.
struct Piece {
  geometry::Point from;  ///< as one walks with the fill on the left, m
  geometry::Point to;
  geometry::Fill beyond;

  [[nodiscard]] double length() const { return std::hypot(to.x - from.x, to.y - from.y); }
  /// Away from the fill, of length 1.
  [[nodiscard]] geometry::Point out() const {
    return {(to.y - from.y) / length(), (from.x - to.x) / length()};
  }
  /// The axis along which it is moved: the one it lies more across.
  [[nodiscard]] char axis() const { return std::abs(out().x) >= std::abs(out().y) ? 'x' : 'y'; }
  /// How far it moves outwards for each metre that it moves up that axis.
  [[nodiscard]] double grows() const { return axis() == 'x' ? out().x : out().y; }
};

/// Whether two pieces face opposite ways.
[[nodiscard]] bool opposite(const Piece& one, const Piece& other);

/// The edges of what shows a fill, in pieces as long as they have the same beyond them.
[[nodiscard]] std::vector<Piece> edges_of(const geometry::Section& section,
                                          const geometry::Fill& fill);

}  // namespace quoin::door
