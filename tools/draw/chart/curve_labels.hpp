// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/draw/canvas/canvas.hpp"
#include "tools/draw/chart/axes.hpp"

namespace quoin::tools {

constexpr double curve_label_pitch = 46.0;  ///< from label to label, units

/// The name of a curve, told right of a chart.
struct CurveLabel {
  std::size_t variant = 0;
  Point end;            ///< of the curve, on the canvas
  std::string name;     ///< of the variant
  std::string coldest;  ///< a line below it; empty: none
};

/// Draws labels right of a chart, spread so that none covers another, each led to its curve.
void draw_curve_labels(Canvas& canvas, const Axes& axes, std::vector<CurveLabel> labels);

}  // namespace quoin::tools
