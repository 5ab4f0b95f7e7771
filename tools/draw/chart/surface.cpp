// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/chart/surface.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "tools/answer/find/developed.hpp"
#include "tools/draw/canvas/strokes.hpp"
#include "tools/draw/chart/axes.hpp"
#include "tools/draw/chart/curve_labels.hpp"
#include "tools/draw/chart/shared_limits.hpp"
#include "tools/draw/field/isotherms.hpp"
#include "tools/draw/field/limits.hpp"
#include "tools/draw/section/sheet.hpp"

namespace quoin::tools {
namespace {

constexpr double left = 62.0;         ///< of the plot, units
constexpr double label_room = 178.0;  ///< right of it
constexpr double right = page_width - page_edge - label_room;
constexpr std::size_t most_charts = 4;  ///< on one picture; surface.csv has them all
const Lettering plain{12.0, Anchor::start, 0.0, false, black, {}};
const Lettering small{11.0, Anchor::start, 0.0, false, grey, {}};

/// One chart: the surface of one room in all variants.
class Chart {
 public:
  Chart(const Results& results, const ComparedSurface& compared, double top)
      : results_(results), compared_(compared) {
    axes_.left = left;
    axes_.right = right;
    axes_.top = top;
    axes_.bottom =
        top + std::max(290.0, curve_label_pitch * static_cast<double>(compared.curves.size()));
    for (const ComparedSurface::Curve& curve : compared.curves) {
      const DevelopedSurface& surface = curve.surface;
      axes_.x.include(surface.along.front() - curve.origin);
      axes_.x.include(surface.along.back() - curve.origin);
      for (const double temperature : surface.temperature) axes_.y.include(temperature);
    }
    limits_ = shared_limits(results, compared);
    for (const SharedLimit& shared : limits_) axes_.y.include(shared.limit.temperature);
    const double air = std::max(0.4, 0.06 * (axes_.y.high - axes_.y.low));
    axes_.y = {axes_.y.low - air, axes_.y.high + air};
  }

  /// Returns where the chart ends.
  double draw(Canvas& canvas) {
    draw_zones(canvas);
    draw_axes(canvas, axes_, 1e3, "°C", words_for_length());
    const ComparedSurface::Curve& first = compared_.curves.front();
    const double end = draw_places(
        canvas, axes_, named_stretches(solved(first).variant, first.surface), first.origin, taken_);
    for (const SharedLimit& shared : limits_) {
      const double y = axes_.up(shared.limit.temperature);
      canvas.line({left, y}, {right, y}, stroke_of(shared.limit));
    }
    Canvas marks;
    draw_curves(canvas, marks);
    draw_limit_names(canvas);
    for (const ComparedSurface::Curve& curve : compared_.curves) draw_badge_on(marks, curve);
    draw_labels(canvas);
    canvas.append(marks);
    return draw_unnamed_limits(canvas, end);
  }

 private:
  [[nodiscard]] const SolvedVariant& solved(const ComparedSurface::Curve& curve) const {
    return results_.variants[curve.variant];
  }

  [[nodiscard]] std::string words_for_length() const {
    const std::string from =
        compared_.origin.empty() ? "" : fmt::format(", from {}", compared_.origin);
    return fmt::format("mm along the surface of {}{}", fitted(compared_.air, 12.0, 150.0), from);
  }

  /// Tints what lies below a limit that holds for all.
  void draw_zones(Canvas& canvas) const {
    for (const SharedLimit& shared : limits_) {
      if (shared.curves.size() < compared_.curves.size()) continue;
      const double edge = axes_.up(shared.limit.temperature);
      canvas.rectangle({left, edge}, right - left, axes_.bottom - edge, {limit_colour, {}, 0.07});
    }
  }

  /// Names the limits on their lines, where the curves leave room.
  void draw_limit_names(Canvas& canvas) {
    const Lettering lettering{12.0, Anchor::start, 0.0, true, limit_colour, white};
    for (const SharedLimit& shared : limits_) {
      const double y = axes_.up(shared.limit.temperature);
      const std::string words = words_for(shared.limit) + words_for_curves(shared, compared_);
      const double last = right - 7.0 - text_width(words, lettering.size);
      Point best;
      bool found = false;
      for (double x = left + 7.0; x <= last && !found; x += 8.0) {
        for (const double base : {y - 6.0, y + 15.0}) {
          if (base < axes_.top + 13.0 || base > axes_.bottom - 3.0 ||
              !taken_.is_free(box_of({x, base}, words, lettering)))
            continue;
          best = {x, base};
          found = true;
          break;
        }
      }
      if (!found) {
        unnamed_.push_back(shared);
        continue;
      }
      taken_.take(box_of(best, words, lettering));
      badges_.take(box_of(best, words, lettering));
      canvas.text(best, words, lettering);
    }
  }

  /// Names the limits that have no room on their lines below the chart.
  double draw_unnamed_limits(Canvas& canvas, double end) const {
    Point at{left, end + 6.0};
    for (const SharedLimit& shared : unnamed_) {
      canvas.line(at, {at.x + 38.0, at.y}, stroke_of(shared.limit));
      at.y =
          draw_key_words(canvas, at, words_for(shared.limit) + words_for_curves(shared, compared_));
    }
    return unnamed_.empty() ? end : at.y;
  }

  [[nodiscard]] Line line_of(const ComparedSurface::Curve& curve, std::size_t first,
                             std::size_t last) const {
    Line line;
    for (std::size_t k = first; k <= last; ++k) {
      line.push_back({axes_.across(curve.surface.along[k] - curve.origin),
                      axes_.up(curve.surface.temperature[k])});
    }
    return line;
  }

  void draw_curves(Canvas& canvas, Canvas& marks) {
    for (const ComparedSurface::Curve& curve : compared_.curves) {
      const DevelopedSurface& surface = curve.surface;
      for (std::size_t first = 0, last = 0; first < surface.is_fabric.size(); first = last) {
        while (last < surface.is_fabric.size() &&
               surface.is_fabric[last] == surface.is_fabric[first]) {
          ++last;
        }
        const Line line = simplified(line_of(curve, first, last), 0.08);
        canvas.polyline(line, stroke_of_variant(curve.variant, surface.is_fabric[first] == 0));
        for (std::size_t k = 1; k < line.size(); ++k) taken_.take(line[k - 1], line[k]);
      }
      if (const auto coldest = coldest_of(curve)) {
        draw_coldest_mark(marks, *coldest);
        taken_.take(Box{*coldest, 12.0, 12.0, 0.0});
        badges_.take(Box{*coldest, 12.0, 12.0, 0.0});
      }
    }
  }

  [[nodiscard]] const solver::Spot* spot_of(const ComparedSurface::Curve& curve) const {
    for (const solver::AirSurface& air : solved(curve).surface.airs) {
      if (air.air == curve.surface.air) return &air.coldest;
    }
    return nullptr;
  }

  /// The coldest spot of the room, where it lies on this surface.
  [[nodiscard]] std::optional<Point> coldest_of(const ComparedSurface::Curve& curve) const {
    const solver::Spot* spot = spot_of(curve);
    if (spot == nullptr) return std::nullopt;
    for (std::size_t k = 0; k < curve.surface.place.size(); ++k) {
      if (curve.surface.place[k] == spot->place) return line_of(curve, k, k).front();
    }
    return std::nullopt;
  }

  /// Where the curve stands at a place across the plot.
  [[nodiscard]] std::optional<Point> at(const ComparedSurface::Curve& curve, double x) const {
    const Line line = line_of(curve, 0, curve.surface.along.size() - 1);
    for (std::size_t k = 1; k < line.size(); ++k) {
      if (line[k].x < x || line[k].x == line[k - 1].x) continue;
      const double share = (x - line[k - 1].x) / (line[k].x - line[k - 1].x);
      if (share < 0.0) return std::nullopt;
      return Point{x, line[k - 1].y + share * (line[k].y - line[k - 1].y)};
    }
    return std::nullopt;
  }

  void draw_badge_on(Canvas& canvas, const ComparedSurface::Curve& curve) {
    constexpr double stride = 9.0;
    for (double x = left + 30.0; x < right - 12.0; x += stride) {
      const auto centre = at(curve, x);
      if (!centre) continue;
      const Box box{*centre, 2 * badge_radius + 3.0, 2 * badge_radius + 3.0, 0.0};
      if (!badges_.is_free(box)) continue;
      badges_.take(box);
      draw_badge(canvas, *centre, curve.variant);
      return;
    }
  }

  /// Names the curves at their right ends.
  void draw_labels(Canvas& canvas) const {
    std::vector<CurveLabel> labels;
    for (const ComparedSurface::Curve& curve : compared_.curves) {
      const std::size_t last = curve.surface.along.size() - 1;
      CurveLabel label{curve.variant, line_of(curve, last, last).front(),
                       solved(curve).variant.name, ""};
      if (const solver::Spot* spot = spot_of(curve))
        label.coldest = fmt::format("coldest {:.1f} °C", spot->temperature.value);
      labels.push_back(std::move(label));
    }
    draw_curve_labels(canvas, axes_, std::move(labels));
  }

  const Results& results_;
  const ComparedSurface& compared_;
  Axes axes_;
  std::vector<SharedLimit> limits_;
  std::vector<SharedLimit> unnamed_;  ///< those that the chart has no room to name
  TakenRoom taken_;                   ///< by lines, marks and words
  TakenRoom badges_;                  ///< by marks and words: badges stand on lines
};

/// What the marks mean. Returns where it ends.
double draw_key(Canvas& canvas, bool has_frame, bool has_limits, const Results& results,
                double top) {
  double y = top + 10.0;
  draw_coldest_mark(canvas, {left + 8.0, y - 4.0});
  canvas.text(
      {left + 22.0, y},
      has_frame ? "coldest spot of the fabric; thin lines: frame and glazing" : "coldest spot",
      small);
  if (has_limits) {
    y += 17.0;
    canvas.text({left, y},
                "Surfaces below the dew point get wet; below the mould limit they reach 80 % "
                "humidity.",
                small);
  }
  if (results.variants.size() > 1 && !results.variants.front().variant.places.empty()) {
    y += 17.0;
    canvas.text({left, y},
                fmt::format("Places are those of \"{}\".",
                            fitted(results.variants.front().variant.name, 11.0, 300.0)),
                small);
  }
  return y + 8.0;
}

std::string description_of(const std::vector<ComparedSurface>& all, const Results& results) {
  std::string words = "Temperature along the inside surface.";
  for (const ComparedSurface& compared : all) {
    for (const ComparedSurface::Curve& curve : compared.curves) {
      const auto [low, high] =
          std::minmax_element(curve.surface.temperature.begin(), curve.surface.temperature.end());
      words +=
          fmt::format(" {}, {}: {:.1f} to {:.1f} °C.", fitted(compared.air, 1.0, 60.0),
                      fitted(results.variants[curve.variant].variant.name, 1.0, 60.0), *low, *high);
    }
  }
  return words;
}

}  // namespace

Picture drawn_surface(const Results& results) {
  const std::vector<ComparedSurface> all = compared_surfaces(results);
  if (all.empty()) return {};
  Canvas canvas;
  double bottom = draw_heading(canvas, results.title, "Temperature along the inside surface");
  bool has_frame = false, has_limits = false;
  for (std::size_t s = 0; s < std::min(all.size(), most_charts); ++s) {
    bottom = Chart(results, all[s], bottom + 34.0).draw(canvas) + 10.0;
    for (const ComparedSurface::Curve& curve : all[s].curves) {
      has_frame = has_frame ||
                  std::count(curve.surface.is_fabric.begin(), curve.surface.is_fabric.end(), 0) > 0;
      has_limits = has_limits || !limits_of(results.variants[curve.variant]).empty();
    }
  }
  if (all.size() > most_charts) {
    canvas.text({left, bottom + 12.0},
                fmt::format("{} further surfaces are in surface.csv", all.size() - most_charts),
                small);
    bottom += 20.0;
  }
  bottom = draw_key(canvas, has_frame, has_limits, results, bottom + 4.0);
  return {std::move(canvas), bottom,
          fmt::format("{}: temperature along the inside surface", results.title),
          description_of(all, results)};
}

}  // namespace quoin::tools
