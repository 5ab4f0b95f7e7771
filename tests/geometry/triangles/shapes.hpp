// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>

#include "geometry/sheet.hpp"

namespace quoin::geometry {

/// An outline turned about the origin.
inline Outline turned(Outline outline, double angle) {
  for (Point& p : outline) {
    p = {std::cos(angle) * p.x - std::sin(angle) * p.y,
         std::sin(angle) * p.x + std::cos(angle) * p.y};
  }
  return outline;
}

inline Sheet turned(Sheet sheet, double angle) {
  for (Patch& patch : sheet) patch.outline = turned(patch.outline, angle);
  return sheet;
}

/// The same numbers on every machine, from 0 up to 1.
class Shares {
 public:
  explicit Shares(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15u + 1) {}
  double operator()() {
    state_ ^= state_ << 13;
    state_ ^= state_ >> 7;
    state_ ^= state_ << 17;
    return static_cast<double>(state_ >> 11) * 0x1p-53;
  }

 private:
  std::uint64_t state_;
};

/// Polygons with three to eight corners heaped upon each other, material and spaces.
inline Sheet heap(std::uint64_t seed, std::size_t polygons) {
  Shares share(seed);
  Sheet sheet = {{SpaceId(0), rectangle(-0.2, 1.2, -0.2, 0), {}},
                 {SpaceId(1), rectangle(-0.2, 1.2, 1, 1.2), {}},
                 {RegionId(0), rectangle(0, 1, 0, 1), {}}};
  for (std::size_t n = 0; n < polygons; ++n) {
    const Point middle = {share(), share()};
    const double radius = 0.02 + 0.4 * share() * share();
    const auto corners = static_cast<std::size_t>(3 + 6 * share());
    Outline outline;
    for (std::size_t k = 0; k < corners; ++k) {
      const double angle = 2 * std::numbers::pi * (static_cast<double>(k) + 0.7 * share()) /
                           static_cast<double>(corners);
      const double own = radius * (0.3 + 0.7 * share());
      outline.push_back({middle.x + own * std::cos(angle), middle.y + own * std::sin(angle)});
    }
    const Fill fill = share() < 0.1 ? Fill{SpaceId(n % 2)} : Fill{RegionId(n % 5)};
    sheet.push_back({fill, outline, {}});
  }
  return sheet;
}

}  // namespace quoin::geometry
