// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <filesystem>
#include <string>
#include <vector>

#include "geometry/sheet.hpp"

namespace quoin::tools {

/// One thing of a drawing, in its own unit. Curves are stroked finely.
struct DrawnThing {
  enum class Kind {
    area,     ///< a hatch: its outline, then its holes
    line,     ///< a polyline, closed where its ends meet
    skipped,  ///< text, dimensions and the like
    broken,   ///< cannot be read, such as a spline by fit points
  };
  std::string layer;
  Kind kind = Kind::line;
  std::string what;  ///< as the drawing calls it: "AcDbSpline"
  std::vector<geometry::Outline> outlines;
};

/// A drawing as it was read.
struct ReadDrawing {
  std::vector<DrawnThing> things;
  int unit = 0;  ///< its code for what one unit of length is; 0: it does not say
};

/// Reads a DXF drawing. Throws: InputError where it cannot be read; PartError where this program
/// has no part that reads drawings.
[[nodiscard]] ReadDrawing drawing_in(const std::filesystem::path& file);

/// What the code of a unit stands for in mm; 0: nothing this program knows.
[[nodiscard]] double millimetres_of(int unit);

}  // namespace quoin::tools

/// Of the part that reads drawings: the things of a file, a line each: layer, kind as a number,
/// what it is, its handle and its outlines, separated by tabs; outlines by semicolons, coordinates
/// by blanks. `is_utf8`: letters are written so, whatever the file says of its code page. False
/// with the reason in `text` where it cannot be read.
extern "C" [[gnu::visibility("default")]] bool quoin_read_drawing(const std::string& file,
                                                                  bool is_utf8,
                                                                  std::string& text) noexcept;
