// SPDX-License-Identifier: Apache-2.0
#include "geometry/paint.hpp"

#include <algorithm>
#include <cmath>
#include <map>

namespace quoin::geometry {

bool inside(const Outline& outline, Point place) {
  bool odd = false;
  for (std::size_t k = 0, last = outline.size() - 1; k < outline.size(); last = k++) {
    const Point a = outline[k];
    const Point b = outline[last];
    if ((a.y > place.y) != (b.y > place.y) &&
        place.x < (b.x - a.x) * (place.y - a.y) / (b.y - a.y) + a.x) {
      odd = !odd;
    }
  }
  return odd;
}

Extent extent_of(const Outline& outline) {
  Extent extent{outline.front(), outline.front()};
  for (const Point corner : outline) {
    extent.low = {std::min(extent.low.x, corner.x), std::min(extent.low.y, corner.y)};
    extent.high = {std::max(extent.high.x, corner.x), std::max(extent.high.y, corner.y)};
  }
  return extent;
}

double on_raster(double length) {
  // Dividing by a whole number gives the double nearest to the decimal; multiplying does not.
  return std::round(length / snap) / std::round(1.0 / snap);
}

Sheet on_raster(Sheet sheet) {
  for (Patch& patch : sheet) {
    for (Point& place : patch.outline) place = {on_raster(place.x), on_raster(place.y)};
  }
  return sheet;
}

std::vector<double> snapped_lines(std::vector<double> coordinates) {
  std::sort(coordinates.begin(), coordinates.end());
  std::vector<double> lines;
  double first_of_cluster = 0.0;
  for (const double at : coordinates) {
    if (!lines.empty() && at - first_of_cluster <= snap) continue;
    first_of_cluster = at;
    const double line = on_raster(at);
    if (lines.empty() || line > lines.back()) lines.push_back(line);
  }
  return lines;
}

Lines lines_of(const Sheet& sheet) {
  std::vector<double> xs;
  std::vector<double> ys;
  std::vector<Outline> outlines;
  for (const Patch& patch : sheet) {
    if (membrane_of(patch) == nullptr) outlines.push_back(patch.outline);
    for (const Point corner : patch.outline) {
      xs.push_back(corner.x);
      ys.push_back(corner.y);
    }
  }
  Lines lines{snapped_lines(std::move(xs)), snapped_lines(std::move(ys))};
  add_lines_for_slopes(outlines, lines);
  return lines;
}

namespace {

/// Where level lines cross an outline: what `inside` asks, for many places in a row.
class Crossings {
 public:
  explicit Crossings(const Outline& outline) : outline_(outline) {}

  [[nodiscard]] bool is_inside(Point place) {
    if (known_.empty() || place.y != height_) look(place.y);
    const auto right = known_.end() - std::upper_bound(known_.begin(), known_.end(), place.x);
    return right % 2 == 1;
  }

 private:
  void look(double height) {
    height_ = height;
    known_.clear();
    for (std::size_t k = 0, last = outline_.size() - 1; k < outline_.size(); last = k++) {
      const Point a = outline_[k], b = outline_[last];
      if ((a.y > height) != (b.y > height))
        known_.push_back((b.x - a.x) * (height - a.y) / (b.y - a.y) + a.x);
    }
    std::sort(known_.begin(), known_.end());
  }

  const Outline& outline_;
  double height_ = 0.0;
  std::vector<double> known_;
};

}  // namespace

Stencil::Stencil(const Outline& outline, const Lines& lines) : chain_(chain_of(outline, lines)) {
  Outline drawn;
  for (const Crossing crossing : chain_.corners)
    drawn.push_back({lines.x[crossing.i], lines.y[crossing.j]});
  std::map<std::pair<std::size_t, std::size_t>, Split> divided;  // by row and column
  for (const Stretch& stretch : chain_.stretches) {
    const auto [from, to] = std::pair{stretch.from, stretch.to};
    if (from.i == to.i || from.j == to.j) continue;
    const bool rising = (from.i < to.i) == (from.j < to.j);
    divided[{std::min(from.j, to.j), std::min(from.i, to.i)}] =
        rising ? Split::rising : Split::falling;
  }
  const auto [low_i, high_i] =
      std::minmax_element(chain_.corners.begin(), chain_.corners.end(),
                          [](const Crossing& a, const Crossing& b) { return a.i < b.i; });
  const auto [low_j, high_j] =
      std::minmax_element(chain_.corners.begin(), chain_.corners.end(),
                          [](const Crossing& a, const Crossing& b) { return a.j < b.j; });
  // By thirds and halves of rows.
  Crossings lower(drawn), middle(drawn), upper(drawn);
  for (std::size_t j = low_j->j; j < high_j->j; ++j) {
    for (std::size_t i = low_i->i; i < high_i->i; ++i) {
      const std::size_t cell = j * (lines.x.size() - 1) + i;
      const double dx = lines.x[i + 1] - lines.x[i], dy = lines.y[j + 1] - lines.y[j];
      const auto place = [&](double u, double v) {
        return Point{lines.x[i] + u * dx, lines.y[j] + v * dy};
      };
      const auto known = divided.find({j, i});
      if (known == divided.end()) {
        if (middle.is_inside(place(0.5, 0.5))) cells_.push_back({cell, {}});
        continue;
      }
      const bool rising = known->second == Split::rising;
      if (lower.is_inside(place(rising ? 2.0 / 3 : 1.0 / 3, 1.0 / 3))) {
        cells_.push_back({cell, {known->second, true}});
      }
      if (upper.is_inside(place(rising ? 1.0 / 3 : 2.0 / 3, 2.0 / 3))) {
        cells_.push_back({cell, {known->second, false}});
      }
    }
  }
}

}  // namespace quoin::geometry
