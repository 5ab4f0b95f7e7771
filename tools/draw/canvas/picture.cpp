// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/picture.hpp"

#include <utility>

#include "tools/draw/canvas/lettering.hpp"
#include "tools/draw/canvas/svg.hpp"

namespace quoin::tools {

Picture::Picture(Canvas canvas, double height, std::string name, std::string description)
    : canvas_(std::move(canvas)),
      height_(height),
      name_(std::move(name)),
      description_(std::move(description)) {}

Picture Picture::noted(std::string_view note) const {
  Picture picture = *this;
  if (is_empty()) return picture;
  const Lettering lettering{11.5, Anchor::start, 0.0, false, grey, {}};
  picture.height_ += 12.0;
  for (const std::string& line : wrapped(note, lettering.size, page_width - 2 * page_edge, 8)) {
    picture.canvas_.text({page_edge, picture.height_}, line, lettering);
    picture.height_ += 15.0;
  }
  return picture;
}

std::string Picture::svg() const { return svg_of(*this); }

}  // namespace quoin::tools
