// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <algorithm>
#include <string_view>
#include <vector>

#include "tools/developed.hpp"
#include "tools/draw/canvas/canvas.hpp"
#include "tools/draw/canvas/lettering.hpp"

namespace quoin::tools {

/// The frame of a chart: where it lies on the picture, in units, and what it shows.
struct Axes {
  struct Range {
    double low = 1e9;
    double high = -1e9;
    void include(double value) {
      low = std::min(low, value);
      high = std::max(high, value);
    }
  };
  double left = 0.0;
  double right = 0.0;
  double top = 0.0;
  double bottom = 0.0;
  Range x, y;

  [[nodiscard]] double across(double value) const {
    return left + (value - x.low) / (x.high - x.low) * (right - left);
  }
  [[nodiscard]] double up(double value) const {
    return bottom - (value - y.low) / (y.high - y.low) * (bottom - top);
  }
};

/// Draws the frame with round figures along both axes. Figures along x are `x_figure` times the
/// value; `x_words` stand below them, `y_unit` on top of the others.
void draw_axes(Canvas& canvas, const Axes& axes, double x_figure, std::string_view y_unit,
               std::string_view x_words);

/// Marks named places of a developed surface, counted from `origin`: points like flags above the
/// frame, stretches below the words of the axis. Takes the room of their names. Returns where the
/// names end.
double draw_places(Canvas& canvas, const Axes& axes, const std::vector<NamedStretch>& places,
                   double origin, TakenRoom& taken);

}  // namespace quoin::tools
