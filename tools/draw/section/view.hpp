// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <limits>
#include <optional>
#include <utility>
#include <vector>

#include "cases/model/case.hpp"
#include "tools/draw/canvas/canvas.hpp"
#include "tools/draw/canvas/lettering.hpp"
#include "tools/draw/section/close_up.hpp"
#include "tools/draw/section/outlines.hpp"

namespace quoin::tools {

/// A rectangle on the section, m.
struct Extent {
  Point low;
  Point high;
  [[nodiscard]] double width() const { return high.x - low.x; }
  [[nodiscard]] double height() const { return high.y - low.y; }
};

/// What the material of a section covers.
[[nodiscard]] Extent material_extent(const geometry::Section& section);

/// A straight piece of the section's grid, m.
struct Stretch {
  Point from;
  Point to;
};

/// Where material ends on nothing: the cut planes, with the material on the left.
[[nodiscard]] std::vector<Stretch> cuts(const geometry::Section& section);

/// How far a picture reaches beyond the material on each side, units: room for a space and its name
/// where there is one.
struct Margins {
  double left = 0.0;
  double right = 0.0;
  double above = 0.0;
  double below = 0.0;
};

/// Of a drawing that may be as large as it fits, units in a metre.
inline constexpr double any_scale = std::numeric_limits<double>::infinity();

/// How a section lies on a picture: true to scale.
class View {
 public:
  /// The section as large as fits a rectangle of the picture, its top left corner at `corner`.
  View(geometry::Section section, Point corner, double width, double height)
      : View(Shown{std::move(section), {}}, corner, width, height) {}
  /// The same of a part of a section, no larger than `largest` units in a metre.
  View(Shown shown, Point corner, double width, double height, double largest = any_scale);

  [[nodiscard]] Point operator()(Point place) const {
    return {left_ + (place.x - material_.low.x) * scale_,
            top_ - (place.y - material_.high.y) * scale_};
  }
  [[nodiscard]] Point place_of(Point at) const {
    return {material_.low.x + (at.x - left_) / scale_, material_.high.y - (at.y - top_) / scale_};
  }
  [[nodiscard]] Line operator()(const geometry::Outline& outline) const;
  [[nodiscard]] std::vector<Line> operator()(const std::vector<geometry::Outline>& all) const;

  [[nodiscard]] double scale() const { return scale_; }  ///< units in a metre
  [[nodiscard]] const Extent& material() const { return material_; }
  [[nodiscard]] const Margins& margins() const { return margins_; }
  [[nodiscard]] const Broken& broken() const { return broken_; }
  /// Whether a stretch lies on a side where the section is broken off, m.
  [[nodiscard]] bool is_broken_off(const Stretch& stretch) const;
  /// Whether a place of the section lies on the picture.
  [[nodiscard]] bool shows(Point place) const;
  /// The section with its outermost spaces as wide as the margin.
  [[nodiscard]] const geometry::Section& section() const { return section_; }
  [[nodiscard]] Point corner() const { return {left_ - margins_.left, top_ - margins_.above}; }
  [[nodiscard]] double width() const {
    return material_.width() * scale_ + margins_.left + margins_.right;
  }
  [[nodiscard]] double height() const {
    return material_.height() * scale_ + margins_.above + margins_.below;
  }
  /// Whether a box lies where the section shows nothing but what `chosen` accepts.
  [[nodiscard]] bool shows_only(const Chosen& chosen, const Box& box) const;

 private:
  geometry::Section section_;
  Broken broken_;
  Extent material_;
  Margins margins_;
  double scale_ = 1.0;
  double left_ = 0.0;  ///< of the material, on the picture
  double top_ = 0.0;
};

/// Tints the spaces.
void tint_spaces(Canvas& canvas, const View& view, const cases::Variant& variant);

/// Tints the spaces and writes their names, with temperature and humidity where `with_air` and
/// there is room. Returns the spaces that show but are too small for their names.
[[nodiscard]] std::vector<geometry::SpaceId> draw_spaces(Canvas& canvas, const View& view,
                                                         const cases::Variant& variant,
                                                         bool with_air, TakenRoom& taken);

/// How a cut plane is drawn.
inline constexpr Stroke cut_stroke{{0x404040}, 1.6, {12, 3, 2, 3}};

/// Marks the cut planes, and breaks off with a kinked line what goes on.
void draw_cuts(Canvas& canvas, const View& view);

/// Only the latter.
void draw_breaks(Canvas& canvas, const View& view);

/// The kinked line of the trade for what is broken off, between two places of the picture.
void draw_break(Canvas& canvas, Point from, Point to);

/// The lines between materials and around them.
void draw_edges(Canvas& canvas, const View& view, std::size_t regions, const Stroke& stroke);

/// How a membrane is drawn.
inline constexpr Stroke membrane_stroke{{0x6a1b9a}, 2.4, {9, 4}};

/// The membranes, as lines.
void draw_membranes(Canvas& canvas, const View& view);

/// A bar of a round length.
void draw_scale_bar(Canvas& canvas, const View& view, Point at);

}  // namespace quoin::tools
