// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/draw/canvas/ink.hpp"

namespace quoin::tools {

/// A colour in the OKLab space: equal distances look equal.
struct Lab {
  double lightness = 0.0;  ///< 0 black to 1 white
  double green_red = 0.0;
  double blue_yellow = 0.0;
};

/// The colour of a temperature, `warmth` 0 (coldest) to 1 (warmest): deep blue over green to pale
/// yellow. Lightness rises evenly, so it reads in grey; blue against yellow keeps it apart for eyes
/// that confuse red and green.
[[nodiscard]] Lab temperature_colour(double warmth);

/// As sRGB shows it.
/// Source: the matrices of OKLab, its published definition; transfer function IEC
/// 61966-2-1 (both from memory).
[[nodiscard]] Colour shown(const Lab& colour);

/// As "#rrggbb".
[[nodiscard]] std::string hex(Colour colour);

/// Letters that stand out on a ground of this colour.
[[nodiscard]] Colour ink_on(const Lab& ground);

}  // namespace quoin::tools
