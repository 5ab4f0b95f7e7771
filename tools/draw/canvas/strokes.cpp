// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/strokes.hpp"

#include <fmt/format.h>

#include <array>

namespace quoin::tools {
namespace {

// Dark and middling in turn; no hue stands beside one that some eyes confuse with it.
constexpr std::array<Colour, 8> colours{{{0x14213d},
                                         {0xc05a00},
                                         {0x00525e},
                                         {0x5b7bd5},
                                         {0x4d1d66},
                                         {0x8a7500},
                                         {0x1f4d1f},
                                         {0xb0487f}}};
// Fewer by one than colours, so that a colour that comes again has other dashes.
using Dashes = std::array<double, 6>;
constexpr std::array<Dashes, 7> dashes{
    {{}, {9, 3}, {3, 3}, {14, 3, 3, 3}, {20, 4}, {6, 2, 2, 2}, {14, 3, 3, 3, 3, 3}}};

Colour colour_of(std::size_t variant) { return colours[variant % colours.size()]; }

}  // namespace

Stroke stroke_of_variant(std::size_t variant, bool thin) {
  return {colour_of(variant), thin ? 1.1 : 2.2, dashes[variant % dashes.size()], Ends::flat};
}

void draw_badge(Canvas& canvas, Point centre, std::size_t variant) {
  const Colour colour = colour_of(variant);
  canvas.circle(centre, badge_radius, {white, {colour, 1.4, {}, Ends::flat}});
  canvas.text({centre.x, centre.y + 4.0}, fmt::format("{}", variant + 1),
              {11.0, Anchor::middle, 0.0, true, colour, {}});
}

}  // namespace quoin::tools
