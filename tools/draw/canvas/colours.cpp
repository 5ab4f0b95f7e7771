// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/colours.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace quoin::tools {
namespace {

/// Linear light, 0 to 1, as an sRGB byte.
std::uint32_t byte(double light) {
  light = std::clamp(light, 0.0, 1.0);
  const double value =
      light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055;
  return static_cast<std::uint32_t>(std::lround(255.0 * value));
}

double cube(double value) { return value * value * value; }

}  // namespace

Lab temperature_colour(double warmth) {
  const double t = std::clamp(warmth, 0.0, 1.0);
  constexpr Lab cold{0.40, -0.02, -0.125};
  constexpr Lab middle{0.0, -0.125, 0.02};  // pulls the path to green; its lightness is not used
  constexpr Lab warm{0.965, -0.015, 0.105};
  const auto curve = [t](double a, double b, double c) {
    return (1 - t) * (1 - t) * a + 2 * t * (1 - t) * b + t * t * c;
  };
  return {cold.lightness + t * (warm.lightness - cold.lightness),
          curve(cold.green_red, middle.green_red, warm.green_red),
          curve(cold.blue_yellow, middle.blue_yellow, warm.blue_yellow)};
}

Colour shown(const Lab& c) {
  const double l = cube(c.lightness + 0.3963377774 * c.green_red + 0.2158037573 * c.blue_yellow);
  const double m = cube(c.lightness - 0.1055613458 * c.green_red - 0.0638541728 * c.blue_yellow);
  const double s = cube(c.lightness - 0.0894841775 * c.green_red - 1.2914855480 * c.blue_yellow);
  return {byte(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s) << 16 |
          byte(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s) << 8 |
          byte(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s)};
}

std::string hex(Colour colour) { return fmt::format("#{:06x}", colour.rgb); }

Colour ink_on(const Lab& ground) { return ground.lightness < 0.64 ? white : Colour{0x101010}; }

}  // namespace quoin::tools
