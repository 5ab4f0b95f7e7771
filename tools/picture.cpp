// SPDX-License-Identifier: Apache-2.0
#include "tools/picture.hpp"

#include <utility>

#include "tools/svg_sheet.hpp"

namespace quoin::tools {

Picture::Picture(Canvas canvas, double bottom, std::string name, std::string description)
    : canvas_(std::move(canvas)),
      bottom_(bottom),
      name_(std::move(name)),
      description_(std::move(description)) {}

std::string Picture::svg(std::string_view note) const {
  if (bottom_ == 0.0) return "";
  Canvas canvas = canvas_;
  const double foot = draw_note(canvas, note, bottom_);
  return canvas.picture(foot, name_, description_);
}

}  // namespace quoin::tools
