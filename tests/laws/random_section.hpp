// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cmath>
#include <cstdint>

#include "tests/support/problem.hpp"

namespace quoin::testing {

/// The same numbers on every machine, which the distributions of the standard library are not.
class Dice {
 public:
  explicit Dice(std::uint64_t seed) : state_(seed * 0x9E3779B97F4A7C15u + 1) {}

  /// From 0 up to 1.
  double share() {
    state_ ^= state_ << 13;
    state_ ^= state_ >> 7;
    state_ ^= state_ << 17;
    return static_cast<double>(state_ >> 11) * 0x1p-53;
  }
  double between(double low, double high) { return low + (high - low) * share(); }
  /// With equal shares of every order of magnitude.
  double scaled_between(double low, double high) {
    return low * std::exp(share() * std::log(high / low));
  }
  std::size_t below(std::size_t n) {
    return static_cast<std::size_t>(share() * static_cast<double>(n));
  }

 private:
  std::uint64_t state_;
};

/// A piece of wall between a room (space 0, 20 degC, on the left) and outside (space 1, 0 degC, on
/// the right) with rectangles of anything painted on it, conductivities from 0.03 to 180 (a
/// contrast of 6000), sometimes a gap, sometimes a room that reaches into the wall.
inline Problem random_section(std::uint64_t seed) {
  Dice dice(seed);
  Problem problem;
  const SpaceId room = problem.space(20, dice.scaled_between(0.04, 0.3));
  const SpaceId outside = problem.space(0, dice.scaled_between(0.02, 0.1));
  const double thickness = dice.between(0.1, 0.6), height = dice.between(0.2, 1.0);
  problem.paint(problem.material(dice.scaled_between(0.3, 2.0)), 0, thickness, 0, height);
  const std::size_t pieces = 2 + dice.below(5);
  for (std::size_t k = 0; k < pieces; ++k) {
    const double x = dice.between(0, 0.8) * thickness, y = dice.between(0, 0.8) * height;
    const RegionId piece = problem.material(dice.scaled_between(0.03, 180));
    problem.paint(piece, x, x + dice.between(0.05, 1) * (thickness - x), y,
                  y + dice.between(0.05, 1) * (height - y));
  }
  if (dice.share() < 0.2) {
    problem.paint(std::monostate{}, 0.4 * thickness, 0.6 * thickness, 0.3 * height, 0.5 * height);
  }
  problem.paint(room, -0.1, 0, 0, height);
  problem.paint(outside, thickness, thickness + 0.1, 0, height);
  if (dice.share() < 0.5) {
    const double y = dice.between(0, 0.7) * height;
    problem.paint(room, -0.1, dice.between(0.1, 0.6) * thickness, y, y + 0.25 * height);
  }
  return problem;
}

}  // namespace quoin::testing
