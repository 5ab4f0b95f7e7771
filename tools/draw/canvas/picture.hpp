// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/draw/canvas/canvas.hpp"

namespace quoin::tools {

/// Left and right of what is drawn, units.
inline constexpr double page_edge = 16.0;

/// A canvas with a height and a name.
class Picture {
 public:
  Picture() = default;  ///< nothing to be shown
  /// `height`: how far down the canvas is drawn on, units. `name` and `description` are for those
  /// who cannot see it.
  Picture(Canvas canvas, double height, std::string name, std::string description);

  [[nodiscard]] bool is_empty() const { return height_ == 0.0; }
  [[nodiscard]] const Canvas& canvas() const { return canvas_; }
  [[nodiscard]] double height() const { return height_; }
  [[nodiscard]] const std::string& name() const { return name_; }
  [[nodiscard]] const std::string& description() const { return description_; }

  /// With the author's note at its foot, which a file of its own has; reports say it once.
  [[nodiscard]] Picture noted(std::string_view note) const;

  /// As the text of an SVG file; empty where there is none.
  [[nodiscard]] std::string svg() const;

 private:
  Canvas canvas_;
  double height_ = 0.0;
  std::string name_;
  std::string description_;
};

}  // namespace quoin::tools
