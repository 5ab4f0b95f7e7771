// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <string>
#include <string_view>
#include <vector>

#include "tools/draw/canvas/canvas.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// A temperature that means something for the surfaces of one air.
struct Limit {
  SpaceId air;
  double temperature = 0.0;      ///< degC
  std::string_view what;         ///< "dew point"
  std::string_view meaning;      ///< what happens below it
  std::array<double, 6> dashes;  ///< of its line in every picture
};

inline constexpr Colour limit_colour{0x9c0048};

/// Dew point and mould limit of every inside air whose humidity is known.
[[nodiscard]] std::vector<Limit> limits_of(const SolvedVariant& solved);

/// "dew point 11.1 °C".
[[nodiscard]] std::string words_for(const Limit& limit);

/// The line of a limit.
[[nodiscard]] Stroke stroke_of(const Limit& limit);

/// The mark of the coldest spot in every picture.
void draw_coldest_mark(Canvas& canvas, Point at);

}  // namespace quoin::tools
