// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/section/dimensions.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace quoin::tools {
namespace {

using geometry::Cell;
using geometry::Fill;
using geometry::RegionId;
using geometry::Section;

constexpr double letter_size = 12.0;
constexpr double level_step = 13.5;  ///< between rows of lettering, units

bool is_material(const Fill& fill) { return std::holds_alternative<RegionId>(fill); }
bool is_flat(Side side) { return side == Side::below || side == Side::above; }

/// Turns "along the chain, away from the drawing" into places on the picture.
class Rail {
 public:
  Rail(const View& view, Side side) : view_(view), side_(side) {}

  [[nodiscard]] double along(double metres) const {
    const Point at = view_({metres, metres});
    return is_flat(side_) ? at.x : at.y;
  }
  [[nodiscard]] Point at(double along, double away) const {
    const Point low = view_(view_.material().low), high = view_(view_.material().high);
    switch (side_) {
      case Side::below:
        return {along, low.y + away};
      case Side::above:
        return {along, high.y - away};
      case Side::left:
        return {low.x - away, along};
      case Side::right:
        return {high.x + away, along};
    }
    return {};
  }
  /// How far off the chain's line the foot of its lettering stands: letters read from below or
  /// from the right, and stand above their line.
  [[nodiscard]] double foot(double level) const {
    constexpr double clear = 3.5;
    const bool outward = side_ == Side::above || side_ == Side::left;
    return outward ? clear + level * level_step : clear + 9.0 + level * level_step;
  }

 private:
  const View& view_;
  Side side_;
};

struct Label {
  double centre, width, level;
  std::string words;
};

/// Labels of a chain, each over its piece if it fits, else on a level of its own farther out.
std::vector<Label> labels_of(const Chain& chain, const Rail& rail, double size) {
  std::vector<Label> labels;
  const auto is_free = [&](const Label& wanted) {
    return std::none_of(labels.begin(), labels.end(), [&](const Label& other) {
      return other.level == wanted.level &&
             std::abs(other.centre - wanted.centre) < (other.width + wanted.width) / 2 + 5.0;
    });
  };
  for (std::size_t k = 0; k + 1 < chain.size(); ++k) {
    const double from = rail.along(chain[k]), to = rail.along(chain[k + 1]);
    const std::string words = length_in_mm(chain[k + 1] - chain[k]);
    Label label{(from + to) / 2, text_width(words, size), 0.0, words};
    if (label.width + 6.0 > std::abs(to - from)) label.level = 1.0;
    while (!is_free(label) && label.level < 6.0) label.level += 1.0;
    labels.push_back(std::move(label));
  }
  return labels;
}

/// Whether a line does not turn at a place.
bool is_straight(Point before, Point here, Point after) {
  const double ax = here.x - before.x, ay = here.y - before.y;
  const double bx = after.x - here.x, by = after.y - here.y;
  return std::abs(ax * by - ay * bx) <= 1e-6 * std::hypot(ax, ay) * std::hypot(bx, by);
}

}  // namespace

std::string length_in_mm(double metres) {
  return fmt::format("{:g}", std::round(metres * 10000.0) / 10.0);
}

Chain layers_along(const Section& section, const Extent& material, Side side) {
  const bool flat = is_flat(side);
  const auto& across = flat ? section.y : section.x;
  const auto& along = flat ? section.x : section.y;
  double edge = 0.0;
  switch (side) {
    case Side::below:
      edge = material.low.y;
      break;
    case Side::above:
      edge = material.high.y;
      break;
    case Side::left:
      edge = material.low.x;
      break;
    case Side::right:
      edge = material.high.x;
      break;
  }
  const auto line = static_cast<std::size_t>(std::lower_bound(across.begin(), across.end(), edge) -
                                             across.begin());
  const bool beyond = side == Side::above || side == Side::right;  // the strip ends on the edge
  const std::size_t strip = beyond ? line - 1 : line;
  Chain chain;
  Fill last;
  for (std::size_t k = 0; k + 1 < along.size(); ++k) {
    const Cell& cell = flat ? section.cell(k, strip) : section.cell(strip, k);
    const Fill fill = is_material(cell.below) ? cell.below : cell.above;
    const Fill shown = is_material(fill) ? fill : Fill{};
    if (shown != last) chain.push_back(along[k]);
    last = shown;
  }
  if (is_material(last)) chain.push_back(along.back());
  return chain.size() > 2 ? chain : Chain{};
}

Chain corners_along(const Section& section, Side side) {
  Chain chain;
  for (const geometry::Outline& outline : outlines(section, is_material)) {
    for (std::size_t k = 0; k < outline.size(); ++k) {
      const Point before = outline[(k + outline.size() - 1) % outline.size()];
      const Point here = outline[k], after = outline[(k + 1) % outline.size()];
      if (is_straight(before, here, after)) continue;  // a slope goes on from cell to cell
      chain.push_back(is_flat(side) ? here.x : here.y);
    }
  }
  std::sort(chain.begin(), chain.end());
  chain.erase(std::unique(chain.begin(), chain.end()), chain.end());
  return chain;
}

double margin_at(const View& view, Side side) {
  switch (side) {
    case Side::below:
      return view.margins().below;
    case Side::left:
      return view.margins().left;
    case Side::above:
      return view.margins().above;
    case Side::right:
      return view.margins().right;
  }
  return 0.0;
}

double chain_room(const View& view, Side side, const Chain& chain) {
  double farthest = 0.0;
  for (const Label& label : labels_of(chain, Rail(view, side), letter_size)) {
    farthest = std::max(farthest, label.level);
  }
  return level_step * (farthest + 1.0) + 7.0;
}

void draw_chain(Canvas& canvas, Canvas& figures, const View& view, Side side, const Chain& chain,
                double distance) {
  const Rail rail(view, side);
  const Lettering lettering{letter_size, Anchor::middle, is_flat(side) ? 0.0 : 90.0,
                            false,       {0x303030},     {}};
  constexpr double tick = 3.5, overshoot = 4.0;
  const auto stroke = [&](Point from, Point to) { canvas.line(from, to, {{0x505050}, 0.7}); };
  stroke(rail.at(rail.along(chain.front()), distance), rail.at(rail.along(chain.back()), distance));
  for (const double place : chain) {
    const double along = rail.along(place);
    stroke(rail.at(along, margin_at(view, side) + 2.0), rail.at(along, distance + overshoot));
    const Point centre = rail.at(along, distance);
    canvas.line({centre.x - tick, centre.y + tick}, {centre.x + tick, centre.y - tick},
                {{0x505050}, 1.3});
  }
  const std::vector<Label> labels = labels_of(chain, rail, lettering.size);
  for (const Label& label : labels) {
    if (label.level > 0.0) {
      const double reach = distance + rail.foot(label.level) - (rail.foot(0.0) < 9.0 ? 1.5 : 10.5);
      stroke(rail.at(label.centre, distance), rail.at(label.centre, reach));
    }
  }
  for (const Label& label : labels) {
    figures.text(rail.at(label.centre, distance + rail.foot(label.level)), label.words, lettering);
  }
}

}  // namespace quoin::tools
