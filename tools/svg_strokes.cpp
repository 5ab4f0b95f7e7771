// SPDX-License-Identifier: Apache-2.0
#include "tools/svg_strokes.hpp"

#include <fmt/format.h>

#include <array>
#include <string_view>

namespace quoin::tools {
namespace {

struct Stroke {
  std::string_view colour;
  std::string_view dashes;
};

// Dark and middling in turn; no hue stands beside one that some eyes confuse with it.
constexpr std::array<Stroke, 8> strokes{{{"#14213d", ""},
                                         {"#c05a00", "9 3"},
                                         {"#00525e", "3 3"},
                                         {"#5b7bd5", "14 3 3 3"},
                                         {"#4d1d66", "20 4"},
                                         {"#8a7500", "6 2 2 2"},
                                         {"#1f4d1f", "2 5"},
                                         {"#b0487f", "14 3 3 3 3 3"}}};

const Stroke& stroke(std::size_t variant) { return strokes[variant % strokes.size()]; }

}  // namespace

std::string stroke_of_variant(std::size_t variant, bool thin) {
  const Stroke& look = stroke(variant);
  return fmt::format(
      "fill=\"none\" stroke=\"{}\" stroke-width=\"{}\"{}", look.colour, thin ? "1.1" : "2.2",
      look.dashes.empty() ? std::string() : fmt::format(" stroke-dasharray=\"{}\"", look.dashes));
}

void draw_badge(Canvas& canvas, Point centre, std::size_t variant) {
  canvas.circle(
      centre, badge_radius,
      fmt::format("fill=\"#ffffff\" stroke=\"{}\" stroke-width=\"1.4\"", stroke(variant).colour));
  canvas.text({centre.x, centre.y + 4.0}, fmt::format("{}", variant + 1),
              {11.0, Anchor::middle, 0.0, true, stroke(variant).colour, ""});
}

}  // namespace quoin::tools
