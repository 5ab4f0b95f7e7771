// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string_view>

namespace quoin::materials {

/// How far a house stands in the wind.
enum class Shelter : std::uint8_t { sheltered, average, exposed };

/// Openings in the walls of a void under a suspended floor, through which outside air passes.
struct AirBricks {
  static constexpr std::string_view alone = "openings";

  double openings = 0.0015;  ///< free area by metre of the walls around the floor, m2/m
  double wind = 4.0;         ///< mean, 10 m above open ground, m/s
  Shelter shelter = Shelter::average;
};

template <class Visitor>
void describe(Visitor& visit, AirBricks& bricks) {
  visit.openings("openings", bricks.openings, 0.0, 0.1,
                 "free area by metre of the walls around the floor");
  visit.speed("wind", bricks.wind, 0.0, 20.0, "mean, 10 m above open ground");
  visit.choice("shelter", bricks.shelter,
               {{"sheltered", Shelter::sheltered},
                {"average", Shelter::average},
                {"exposed", Shelter::exposed}},
               "town centre, suburb or open country");
}

/// The heat that this air takes out of the void, W/(m K) by metre of wall, half the floor's width
/// belonging to each of two walls. Source: ISO 13370, 1450 openings wind shielding / width, with
/// shielding 0.02, 0.05 and 0.10 (memory).
[[nodiscard]] constexpr double loss_through(const AirBricks& bricks) {
  const double shielding = bricks.shelter == Shelter::sheltered ? 0.02
                           : bricks.shelter == Shelter::average ? 0.05
                                                                : 0.10;
  return 1450.0 / 2 * bricks.openings * bricks.wind * shielding;
}

}  // namespace quoin::materials
