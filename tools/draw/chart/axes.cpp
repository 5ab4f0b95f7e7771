// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/chart/axes.hpp"

#include <fmt/format.h>

#include <cmath>

#include "tools/draw/field/isotherms.hpp"
#include "tools/draw/section/sheet.hpp"

namespace quoin::tools {
namespace {

constexpr double size = 11.0;  ///< of the names of places
constexpr Colour ink = grey;
constexpr Stroke frame{black, 0.9};

std::string figure(double value) {
  return fmt::format("{:g}", std::round(value * 1e3) / 1e3 + 0.0);
}

/// Names points like flags: those further right on lower rows, so that no pole crosses a name.
void draw_points(Canvas& canvas, const Axes& axes, std::vector<NamedStretch> points, double origin,
                 TakenRoom& taken) {
  std::stable_sort(points.begin(), points.end(),
                   [](const NamedStretch& a, const NamedStretch& b) { return a.from > b.from; });
  for (const NamedStretch& point : points) {
    const double x = axes.across(point.from - origin);
    const std::string name = fitted(point.name, size, 200.0);
    const bool flips = x + text_width(name, size) > page_width - page_edge;
    const Lettering words{size, flips ? Anchor::end : Anchor::start, 0.0, false, ink, {}};
    Point at{flips ? x - 4.0 : x + 4.0, axes.top - 6.0};
    const double highest = axes.top - 33.0;
    while (at.y > highest && !taken.is_free(box_of(at, name, words))) at.y -= 13.0;
    const bool has_room = taken.is_free(box_of(at, name, words));
    canvas.line({x, has_room ? at.y - 9.0 : axes.top}, {x, axes.bottom}, {{0x6a6a6a}, 0.8, {1, 3}});
    if (!has_room) continue;
    taken.take(box_of(at, name, words));
    canvas.text(at, name, words);
  }
}

}  // namespace

void draw_axes(Canvas& canvas, const Axes& axes, double x_figure, std::string_view y_unit,
               std::string_view x_words) {
  const std::vector<double> levels = round_levels(axes.y.low, axes.y.high, 10);
  for (const double level : levels) {
    canvas.line({axes.left, axes.up(level)}, {axes.right, axes.up(level)}, {{0xc4c4c4}, 0.6});
  }
  canvas.rectangle({axes.left, axes.top}, axes.right - axes.left, axes.bottom - axes.top,
                   {{}, frame});
  Lettering lettering{12.0, Anchor::end, 0.0, false, black, {}};
  for (const double level : levels) {
    canvas.text({axes.left - 7.0, axes.up(level) + 4.2}, figure(level), lettering);
  }
  canvas.text({axes.left - 7.0, axes.top - 7.0}, y_unit, lettering);
  lettering.anchor = Anchor::middle;
  for (const double level : round_levels(x_figure * axes.x.low, x_figure * axes.x.high, 8)) {
    const double x = axes.across(level / x_figure);
    canvas.line({x, axes.bottom}, {x, axes.bottom + 5.0}, frame);
    canvas.text({x, axes.bottom + 18.0}, figure(level), lettering);
  }
  lettering.anchor = Anchor::start;
  canvas.text({axes.left, axes.bottom + 36.0},
              fitted(x_words, lettering.size, page_width - page_edge - axes.left), lettering);
}

double draw_places(Canvas& canvas, const Axes& axes, const std::vector<NamedStretch>& places,
                   double origin, TakenRoom& taken) {
  const Lettering words{size, Anchor::middle, 0.0, false, ink, {}};
  const double row = axes.bottom + 56.0;
  double foot = axes.bottom + 36.0;
  std::vector<NamedStretch> points;
  for (const NamedStretch& place : places) {
    if (place.from == place.to) {
      points.push_back(place);
      continue;
    }
    const double from = axes.across(place.from - origin), to = axes.across(place.to - origin);
    canvas.polyline({{from, row - 12.0}, {from, row - 7.0}, {to, row - 7.0}, {to, row - 12.0}},
                    {ink, 0.9});
    // Names wider than their stretch go on below those of others.
    const std::string name = fitted(place.name, size, 200.0);
    const double half = text_width(name, size) / 2;
    Point at{std::clamp((from + to) / 2, axes.left + half, page_width - page_edge - half),
             row + 6.0};
    while (!taken.is_free(box_of(at, name, words))) at.y += 14.0;
    taken.take(box_of(at, name, words));
    canvas.text(at, name, words);
    foot = std::max(foot, at.y);
  }
  draw_points(canvas, axes, std::move(points), origin, taken);
  return foot + 8.0;
}

}  // namespace quoin::tools
