// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "tools/draw/canvas/ink.hpp"

namespace quoin::tools {

/// About how wide a text comes out, in units; a little more for most fonts.
[[nodiscard]] double text_width(std::string_view text, double size);

/// How much wider bold letters come out.
inline constexpr double bold_width = 1.08;

/// The text, cut short with an ellipsis where it would be wider than `width`.
[[nodiscard]] std::string fitted(std::string_view text, double size, double width);

/// The text in lines no wider than `width`, at most `most` of them; the last is cut short.
[[nodiscard]] std::vector<std::string> wrapped(std::string_view text, double size, double width,
                                               std::size_t most);

/// A rectangle, turned about its centre.
struct Box {
  Point centre;
  double width = 0.0;
  double height = 0.0;
  double turn = 0.0;  ///< degrees, counter-clockwise as seen
};

/// Whether two boxes share a point.
[[nodiscard]] bool overlap(const Box& a, const Box& b);

/// The box a text covers when set at a place.
[[nodiscard]] Box box_of(Point at, std::string_view words, const Lettering& lettering);

/// Room already taken on a picture.
class TakenRoom {
 public:
  [[nodiscard]] bool is_free(const Box& box) const;
  [[nodiscard]] bool is_free(Point from, Point to) const;  ///< for a thin line
  void take(const Box& box) { boxes_.push_back(box); }
  void take(Point from, Point to);  ///< a thin line

 private:
  std::vector<Box> boxes_;
};

}  // namespace quoin::tools
