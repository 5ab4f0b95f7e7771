// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace quoin::tools {

/// An SVG picture and where it lies on a page, mm from its top left corner.
struct PlacedPicture {
  std::string svg;
  double x = 0.0;
  double y = 0.0;
  double width = 0.0;
  double height = 0.0;
};

/// A line of plain letters, painted by themselves: librsvg takes a hundred times as long for them.
struct PlacedText {
  std::string words;
  double x = 0.0;     ///< of its start, or of its end; mm
  double y = 0.0;     ///< of the foot of the letters, mm
  double size = 3.0;  ///< mm
  bool bold = false;
  bool ends = false;  ///< at x, rather than starts there
  double grey = 0.0;  ///< 0 black to 1 white
};

/// Whether words can be painted so: from left to right, letter by letter, from one font.
[[nodiscard]] bool is_plain(std::string_view words);

/// One page: the pictures, later ones on top, and the words on them.
struct Page {
  std::vector<PlacedPicture> pictures;
  std::vector<PlacedText> texts;
};

inline constexpr double page_width_mm = 210.0;  ///< A4 upright
inline constexpr double page_height_mm = 297.0;

/// Pages as the text of a PDF file, with letters as letters. The title must be UTF-8. No date in
/// it: the same pages give the same text on one machine; another may have other fonts. Throws:
/// PaintError where a picture cannot be painted.
[[nodiscard]] std::string pdf_of(const std::vector<Page>& pages, std::string_view title);

/// A picture as the text of a PNG file of so many pixels across, on white. Throws: PaintError.
[[nodiscard]] std::string png_of(std::string_view svg, int width);

}  // namespace quoin::tools
