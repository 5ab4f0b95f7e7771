// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <array>
#include <cstdint>
#include <memory>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "geometry/sheet.hpp"

namespace quoin::tools {

/// A place on a picture: units to the right and down. A picture is `page_width` units wide; printed
/// across the text of an A5 page (128 mm) one unit is 0.2 mm.
using geometry::Point;
using Line = std::vector<Point>;

inline constexpr double page_width = 640.0;

/// An sRGB colour, 0xrrggbb.
struct Colour {
  std::uint32_t rgb = 0;
  bool operator==(const Colour&) const = default;
};

inline constexpr Colour black{0x1c1c1c};  ///< of letters and frames
inline constexpr Colour grey{0x484848};   ///< of what is said beside
inline constexpr Colour white{0xffffff};

/// How a line ends, and each of its dashes.
enum class Ends { flat, round, square };

/// A line with a pen.
struct Stroke {
  Colour colour;
  double width = 0.0;              ///< units; 0: no line
  std::array<double, 6> dashes{};  ///< ink and gap in turn, units, as far as they are not 0
  Ends ends = Ends::flat;
  bool operator==(const Stroke&) const = default;
};

/// A tile of strokes that is laid over an area from the origin of the picture on.
struct Hatch {
  std::string name;     ///< different for different hatches of a picture: letters, digits, hyphens
  double width = 0.0;   ///< of the tile, units
  double height = 0.0;  ///< of the tile, units
  double turn = 0.0;    ///< of all tiles about the origin, degrees, clockwise as seen
  std::vector<Line> strokes;
  Stroke pen;
  bool operator==(const Hatch&) const = default;
};

/// What an area is filled with: nothing, a colour, or a hatch (never null).
using Paint = std::variant<std::monostate, Colour, std::shared_ptr<const Hatch>>;

/// How a shape is painted: filled, then outlined.
struct Ink {
  Paint fill;
  Stroke stroke;
  double opacity = 1.0;  ///< of the fill
  bool operator==(const Ink&) const = default;
};

enum class Anchor { start, middle, end };

/// How a text is set.
struct Lettering {
  double size = 13.0;  ///< 13 units are 7.4 points on A5
  Anchor anchor = Anchor::start;
  double turn = 0.0;  ///< degrees, counter-clockwise, about its place
  bool bold = false;
  Colour colour = black;
  std::optional<Colour> halo;  ///< a thin outline behind the letters
};

inline constexpr double halo_width = 3.0;  ///< units

}  // namespace quoin::tools
