// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/results/results.hpp"
#include "tools/draw/field/bands.hpp"
#include "tools/draw/field/isotherms.hpp"
#include "tools/draw/field/limits.hpp"
#include "tools/draw/field/smoothing.hpp"
#include "tools/draw/section/callouts.hpp"
#include "tools/draw/section/view.hpp"

namespace quoin::tools {

/// The field of one variant on its way onto a picture, for the surface-temperature purpose.
class FieldDrawing {
 public:
  static constexpr double smooth = 5.0;  ///< no corner of a curve is seen, units

  /// `longest`: straight piece of a curve, units.
  FieldDrawing(const SolvedVariant& solved, const View& view, Bands bands, double longest = smooth);

  void draw_bands(Canvas& canvas);

  /// After the bands: each isotherm, with its temperature in letters of a size where there is room.
  /// Size 0: without.
  void draw_isotherms(Canvas& canvas, TakenRoom& taken, double size = 11.5) const;

  /// The isotherms of dew point and mould, with their names where `named` and there is room.
  void draw_limits(Canvas& canvas, TakenRoom& taken, bool named) const;

  /// The coldest spot of each room, with its temperature in a box.
  void draw_coldest(Canvas& canvas, Callouts& callouts, TakenRoom& taken) const;

 private:
  [[nodiscard]] bool lies_between(const Box& box, double level, double most) const;
  [[nodiscard]] Point towards(SpaceId air, Point at) const;

  const SolvedVariant& solved_;
  const View& view_;
  Bands bands_;
  FineField fine_;
  IsothermFinder finder_;
  std::vector<Isotherm> isotherms_;
};

/// Outlines as lines on the picture, with no more points than it can show.
[[nodiscard]] std::vector<Line> drawn(const View& view,
                                      const std::vector<geometry::Outline>& outlines);

/// The name of a limit in a variant, with its air where there are several.
[[nodiscard]] std::string words_in(const SolvedVariant& solved, const Limit& limit);

}  // namespace quoin::tools
