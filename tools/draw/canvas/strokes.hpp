// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>

#include "tools/draw/canvas/canvas.hpp"

namespace quoin::tools {

/// The line of one variant in pictures that show several. Neighbours differ in
/// dashes and in lightness, so that they stay apart in black and white.
[[nodiscard]] Stroke stroke_of_variant(std::size_t variant, bool thin = false);

/// The number of a variant in a circle, to name a line of which only a piece is seen.
void draw_badge(Canvas& canvas, Point centre, std::size_t variant);

inline constexpr double badge_radius = 8.0;  ///< units

}  // namespace quoin::tools
