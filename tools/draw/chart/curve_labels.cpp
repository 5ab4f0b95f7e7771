// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/chart/curve_labels.hpp"

#include <algorithm>

#include "tools/draw/canvas/strokes.hpp"
#include "tools/draw/section/sheet.hpp"

namespace quoin::tools {
namespace {

struct PlacedLabel {
  CurveLabel label;
  double y;
};

std::vector<PlacedLabel> spread(std::vector<CurveLabel> labels, const Axes& axes) {
  std::vector<PlacedLabel> placed;
  for (CurveLabel& label : labels) {
    const double y = label.end.y;
    placed.push_back({std::move(label), y});
  }
  std::stable_sort(placed.begin(), placed.end(), [](const PlacedLabel& a, const PlacedLabel& b) {
    return a.label.end.y < b.label.end.y;
  });
  double lowest = axes.top + curve_label_pitch / 2;
  for (PlacedLabel& each : placed) {
    each.y = std::max(each.y, lowest);
    lowest = each.y + curve_label_pitch;
  }
  double highest = axes.bottom - curve_label_pitch / 2;
  for (auto each = placed.rbegin(); each != placed.rend(); ++each) {
    each->y = std::min(each->y, highest);
    highest = each->y - curve_label_pitch;
  }
  return placed;
}

}  // namespace

void draw_curve_labels(Canvas& canvas, const Axes& axes, std::vector<CurveLabel> labels) {
  for (const auto& [label, height] : spread(std::move(labels), axes)) {
    const Point badge{axes.right + 36.0, height};
    canvas.polyline({label.end, {axes.right + 5.0, label.end.y}, {badge.x - 16.0, badge.y}, badge},
                    stroke_of_variant(label.variant));
    draw_badge(canvas, badge, label.variant);
    const double x = badge.x + badge_radius + 6.0, room = page_width - page_edge - x;
    const std::vector<std::string> lines = wrapped(label.name, 11.5, room, 2);
    double y = height + 4.0 - 7.0 * static_cast<double>(lines.size());
    for (const std::string& line : lines) {
      canvas.text({x, y}, line, {11.5, Anchor::start, 0.0, false, black, {}});
      y += 14.0;
    }
    if (!label.coldest.empty())
      canvas.text({x, y}, label.coldest, {11.0, Anchor::start, 0.0, false, grey, {}});
  }
}

}  // namespace quoin::tools
