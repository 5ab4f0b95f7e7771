// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <string_view>

#include "tools/svg_canvas.hpp"

namespace quoin::tools {

/// A picture that is drawn but for the author's note at its foot, which its file has and reports,
/// which say it once, have not.
class Picture {
 public:
  Picture() = default;  ///< nothing to be shown
  /// `bottom`: how far down the canvas is drawn on, units. `name` and `description` are for those
  /// who cannot see it.
  Picture(Canvas canvas, double bottom, std::string name, std::string description);

  /// The finished picture; empty where there is none.
  [[nodiscard]] std::string svg(std::string_view note = "") const;

 private:
  Canvas canvas_;
  double bottom_ = 0.0;
  std::string name_;
  std::string description_;
};

}  // namespace quoin::tools
