// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

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

/// As "#rrggbb".
/// Source: the matrices of OKLab, its published definition; transfer function IEC
/// 61966-2-1 (both from memory).
[[nodiscard]] std::string hex(const Lab& colour);

/// Letters that stand out on a ground of this colour.
[[nodiscard]] std::string_view ink_on(const Lab& ground);

}  // namespace quoin::tools
