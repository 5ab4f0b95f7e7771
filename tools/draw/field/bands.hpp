// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/draw/canvas/canvas.hpp"
#include "tools/draw/canvas/colours.hpp"
#include "tools/results.hpp"

namespace quoin::tools {

/// A scale of temperatures in bands of colour, degC.
struct Bands {
  double low = 1e9;
  double high = -1e9;
  std::vector<double> levels;

  /// Band k lies below level k, the last above all levels.
  [[nodiscard]] Lab colour(std::size_t k) const;
  [[nodiscard]] double step() const;
};

/// The scale from the coldest to the warmest space of one variant, or of several: so those in the
/// same climate have the same colours.
[[nodiscard]] Bands bands_of(const cases::Variant& variant);
[[nodiscard]] Bands bands_of(const std::vector<SolvedVariant>& variants);

/// The temperature of a level as pictures write it.
[[nodiscard]] std::string figure_of(double level);

/// The colours of the bands with the temperatures between them, upright or lying, from `at` on.
void draw_colour_bar(Canvas& canvas, const Bands& bands, Point at, double height);
void draw_lying_colour_bar(Canvas& canvas, const Bands& bands, Point at, double width);

}  // namespace quoin::tools
