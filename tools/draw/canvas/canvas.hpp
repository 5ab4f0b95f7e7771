// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <string>
#include <string_view>
#include <variant>
#include <vector>

#include "tools/draw/canvas/ink.hpp"

namespace quoin::tools {

/// Lines, open or closed; closed ones are one area, filled by the even-odd rule.
struct Path {
  std::vector<Line> lines;
  bool closed = false;
  Ink ink;
};

struct Rectangle {
  Point corner;  ///< top left
  double width = 0.0;
  double height = 0.0;
  double rounding = 0.0;  ///< radius of its corners
  Ink ink;
};

struct Disc {
  Point centre;
  double radius = 0.0;
  Ink ink;
};

struct Words {
  Point at;
  std::string text;  ///< UTF-8 without control characters
  Lettering lettering;
};

class Canvas;

/// A canvas on a canvas.
struct Inset {
  std::shared_ptr<const Canvas> canvas;  ///< never null
  Point corner;                          ///< where its origin lies
  double scale = 1.0;
};

/// Where a part of a text begins or ends, by what it is: "H1", "P", "Table", "TR", "TH", "TD",
/// "LI", "Figure". For who has a page read out; nothing of it is seen.
struct Mark {
  std::string part;
  bool begins = true;
};

using Item = std::variant<Path, Rectangle, Disc, Words, Inset, Mark>;

/// What is drawn, as a list of items, later ones on top. It knows no file format: svg.hpp and
/// paint.hpp write it.
class Canvas {
 public:
  void append(const Canvas& other);  ///< on top of this

  void line(Point from, Point to, const Stroke& stroke);
  void polyline(Line line, const Stroke& stroke);
  void rectangle(Point corner, double width, double height, const Ink& ink, double rounding = 0.0);
  void circle(Point centre, double radius, const Ink& ink);
  /// Closed lines as one area, filled by the even-odd rule.
  void area(std::vector<Line> outlines, const Ink& ink);
  /// What cannot be printed, control characters and what is no UTF-8, becomes U+FFFD.
  void text(Point at, std::string_view words, const Lettering& lettering = {});
  void inset(std::shared_ptr<const Canvas> canvas, Point corner, double scale);

  void begin(std::string_view part);
  void end(std::string_view part);

  [[nodiscard]] const std::vector<Item>& items() const { return items_; }

 private:
  std::vector<Item> items_;
};

}  // namespace quoin::tools
