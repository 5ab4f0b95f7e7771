// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "geometry/sheet.hpp"

namespace quoin::tools {

/// A place on a picture: units to the right and down. A picture is `page_width` units wide; printed
/// across the text of an A5 page (128 mm) one unit is 0.2 mm.
using geometry::Point;
using Line = std::vector<Point>;

inline constexpr double page_width = 640.0;

/// Text that is safe between tags and in attributes; what XML cannot hold becomes U+FFFD.
[[nodiscard]] std::string escaped(std::string_view text);

/// A number as pictures print it: at most two decimals, no trailing zeros, no "-0".
[[nodiscard]] std::string number(double value);

enum class Anchor { start, middle, end };

/// How a text is set.
struct Lettering {
  double size = 13.0;  ///< 13 units are 7.4 points on A5
  Anchor anchor = Anchor::start;
  double turn = 0.0;  ///< degrees, counter-clockwise, about its place
  bool bold = false;
  std::string_view colour = "#1c1c1c";
  std::string_view halo = "";  ///< a thin outline behind the letters; empty: none
};

/// Writes one SVG picture. Nothing in it depends on locale, clock or order of a hash.
class Canvas {
 public:
  /// What goes into <defs>. The markup must be safe.
  void define(std::string_view markup);

  void open(std::string_view attributes);  ///< a group
  void close();
  void append(const Canvas& other);  ///< on top of this

  void line(Point from, Point to, std::string_view attributes = "");
  void polyline(const Line& line, std::string_view attributes = "");
  void rectangle(Point corner, double width, double height, std::string_view attributes = "");
  void circle(Point centre, double radius, std::string_view attributes = "");
  /// Closed lines as one area, filled by the even-odd rule.
  void area(const std::vector<Line>& outlines, std::string_view attributes = "");
  void text(Point at, std::string_view words, const Lettering& lettering = {});

  /// The finished picture. `title` is its name, `description` what a person who cannot see it
  /// needs.
  [[nodiscard]] std::string picture(double height, std::string_view title,
                                    std::string_view description) const;

 private:
  void place(Point at);

  std::string definitions_;
  std::string body_;
};

/// The height of a picture that a canvas finished, units.
[[nodiscard]] double height_of(std::string_view picture);

}  // namespace quoin::tools
