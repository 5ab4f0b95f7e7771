// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/paint.hpp"

#include "tools/draw/canvas/cairo_paint.hpp"
#include "tools/parts.hpp"

namespace quoin::tools {

std::string pdf_of(const std::vector<Canvas>& pages, std::string_view title) {
  return made_by<decltype(quoin_paint_pdf)>("paint", "quoin_paint_pdf",
                                            "the PDF report cannot be painted", pages, title);
}

std::string png_of(const Picture& picture, int width) {
  return made_by<decltype(quoin_paint_png)>("paint", "quoin_paint_png",
                                            "a picture cannot be painted", picture, width);
}

}  // namespace quoin::tools
