// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/chart/readings.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>
#include <vector>

#include "tools/answer/find/developed.hpp"
#include "tools/answer/survey/survey_words.hpp"
#include "tools/draw/chart/axes.hpp"
#include "tools/draw/section/sheet.hpp"

namespace quoin::tools {
namespace {

constexpr double left = 62.0;         ///< of the plot, units
constexpr double label_room = 208.0;  ///< right of it
constexpr double right = page_width - page_edge - label_room;
constexpr double column = 22.0;       ///< of a reading that lies elsewhere, units
constexpr double label_pitch = 29.0;  ///< from label to label
constexpr double badge_radius = 7.5;
constexpr Colour range_colour{0x5b7bd5}, as_expected{0x14213d}, off_colour{0x9c0048};
const Lettering plain{11.5, Anchor::start, 0.0, false, black, {}};
const Lettering small{11.0, Anchor::start, 0.0, false, grey, {}};

bool counts(const ExpectedReading& one) { return one.left_out.empty(); }

bool within(const ExpectedReading& one) { return one.low <= one.read && one.read <= one.high; }

/// How far along a surface a probe lies, m; nothing where it lies elsewhere.
std::optional<double> along(const DevelopedSurface& surface, geometry::Point probe) {
  constexpr double near = 0.010;  // m
  std::optional<double> best;
  double least = near;
  for (std::size_t k = 0; k < surface.place.size(); ++k) {
    const double away = std::hypot(surface.place[k].x - probe.x, surface.place[k].y - probe.y);
    if (away >= least) continue;
    least = away;
    best = surface.along[k];
  }
  return best;
}

/// The readings over the inside surface that most of them lie on; others beside it.
class ReadingsChart {
 public:
  ReadingsChart(const SolvedVariant& read, const Explained& best, double top)
      : variant_(read.variant), best_(best) {
    take_surface(developed_surfaces(read));
    const auto elsewhere = static_cast<double>(std::count(on_.begin(), on_.end(), std::nullopt));
    axes_.left = left;
    axes_.right = surface_ ? std::max(left + 120.0, right - column * elsewhere) : left;
    axes_.top = top;
    axes_.bottom =
        top + std::max(200.0, label_pitch * static_cast<double>(best.readings.size()) + 12.0);
    if (surface_) take_part();
    for (const ExpectedReading& one : best.readings) {
      if (!is_temperature(one)) continue;
      axes_.y.include(one.read);
      if (!counts(one)) continue;
      axes_.y.include(one.low);
      axes_.y.include(one.high);
    }
    axes_.y = {axes_.y.low - 0.5, axes_.y.high + 0.5};
  }

  /// Returns where the chart ends.
  double draw(Canvas& canvas) {
    Axes whole = axes_;
    whole.right = right;
    if (!surface_) whole.x = {0.0, 1.0};
    double end = axes_.bottom + 16.0;
    if (surface_) {
      draw_axes(canvas, axes_, 1e3, "°C", "mm along the inside surface");
      TakenRoom taken;
      end = draw_places(canvas, axes_, places(), 0.0, taken);
    }
    canvas.rectangle({left, axes_.top}, right - left, axes_.bottom - axes_.top, {{}, {black, 0.9}});
    if (axes_.right < right - 1.0) {
      canvas.text({right, axes_.top - 7.0}, surface_ ? "elsewhere" : "",
                  {11.0, Anchor::end, 0.0, false, grey, {}});
    }
    double next = axes_.right + column / 2;
    double y = axes_.top + 14.0;
    for (std::size_t k = 0; k < best_.readings.size(); ++k) {
      const ExpectedReading& one = best_.readings[k];
      if (is_temperature(one)) {
        draw_reading(canvas, k, on_[k] ? axes_.across(*on_[k]) : next);
        if (!on_[k]) next += column;
      }
      y = draw_label(canvas, k, y);
    }
    return end;
  }

 private:
  /// Those across pads are differences; the variant has them not among its readings.
  [[nodiscard]] bool is_temperature(const ExpectedReading& one) const {
    return !one.section.empty() ||
           std::any_of(variant_.readings.begin(), variant_.readings.end(),
                       [&](const cases::Reading& reading) {
                         return reading.probe == one.probe && reading.temperature == one.read;
                       });
  }

  void take_surface(const std::vector<DevelopedSurface>& surfaces) {
    std::size_t most = 1;
    on_.assign(best_.readings.size(), std::nullopt);
    for (const DevelopedSurface& surface : surfaces) {
      std::vector<std::optional<double>> on;
      for (const ExpectedReading& one : best_.readings) {
        on.emplace_back();
        for (const cases::Probe& probe : variant_.probes) {
          if (one.section.empty() && probe.name == one.probe && is_temperature(one))
            on.back() = along(surface, probe.place);
        }
      }
      const auto number = on.size() - std::size_t(std::count(on.begin(), on.end(), std::nullopt));
      if (number <= most) continue;
      most = number;
      on_ = on;
      surface_ = surface;
    }
  }

  /// The part of the surface that was read, with a little on either side.
  void take_part() {
    constexpr double beside = 0.15;  // m
    for (const std::optional<double>& at : on_) {
      if (at) axes_.x.include(*at);
    }
    axes_.x = {std::max(surface_->along.front(), axes_.x.low - beside),
               std::min(surface_->along.back(), axes_.x.high + beside)};
  }

  /// The named places of that part.
  [[nodiscard]] std::vector<NamedStretch> places() const {
    std::vector<NamedStretch> all;
    for (NamedStretch place : named_stretches(variant_, *surface_)) {
      if (place.to < axes_.x.low || place.from > axes_.x.high) continue;
      place.from = std::max(place.from, axes_.x.low);
      place.to = std::min(place.to, axes_.x.high);
      all.push_back(std::move(place));
    }
    return all;
  }

  [[nodiscard]] Colour colour_of(const ExpectedReading& one) const {
    return !counts(one) ? grey : within(one) ? as_expected : off_colour;
  }

  void draw_reading(Canvas& canvas, std::size_t k, double x) const {
    const ExpectedReading& one = best_.readings[k];
    if (counts(one)) {
      const double top = axes_.up(one.high), bottom = axes_.up(one.low);
      canvas.rectangle({x - 4.0, top}, 8.0, bottom - top, {range_colour, {}, 0.35}, 2.0);
      canvas.line({x - 4.0, axes_.up(one.expected)}, {x + 4.0, axes_.up(one.expected)},
                  {range_colour, 1.2});
    }
    draw_number(canvas, {x, axes_.up(one.read)}, k, colour_of(one));
  }

  static void draw_number(Canvas& canvas, Point centre, std::size_t k, Colour colour) {
    canvas.circle(centre, badge_radius, {white, {colour, 1.4, {}, Ends::flat}});
    canvas.text({centre.x, centre.y + 3.6}, fmt::format("{}", k + 1),
                {11.0, Anchor::middle, 0.0, true, colour, {}});
  }

  double draw_label(Canvas& canvas, std::size_t k, double y) const {
    const ExpectedReading& one = best_.readings[k];
    const Colour colour = colour_of(one);
    const double x = right + 18.0 + 2 * badge_radius, room = page_width - page_edge - x;
    draw_number(canvas, {right + 18.0, y - 4.0}, k, colour);
    const std::string name =
        one.section.empty() ? one.probe : fmt::format("{}: {}", one.section, one.probe);
    canvas.text({x, y}, fitted(name, plain.size, room), plain);
    const std::string unit = is_temperature(one) ? "°C" : "K across";
    Lettering words = small;
    words.colour = colour;
    canvas.text({x, y + 13.0},
                fitted(counts(one) ? fmt::format("{:.1f} {}, expected {:.1f} to {:.1f}{}", one.read,
                                                 unit, one.low, one.high, within(one) ? "" : " !")
                                   : fmt::format("{:.1f} {}, left out", one.read, unit),
                       words.size, room),
                words);
    return y + label_pitch;
  }

  const cases::Variant& variant_;
  const Explained& best_;
  Axes axes_;
  std::optional<DevelopedSurface> surface_;
  std::vector<std::optional<double>> on_;  ///< along that surface, m. Shape: readings
};

std::string description_of(const SurveyFindings& findings) {
  const Explained& best = findings.explanations.front();
  std::string words =
      fmt::format("Readings beside what \"{}\" expects.", name_of(findings, best.what));
  for (const ExpectedReading& one : best.readings) {
    words += fmt::format(
        " {}: {:.1f}, {}.", one.probe, one.read,
        !counts(one) ? "left out" : fmt::format("expected {:.1f} to {:.1f}", one.low, one.high));
  }
  return words;
}

}  // namespace

Picture drawn_readings(const Results& results) {
  if (!results.survey || results.variants.empty() || results.survey->explanations.empty())
    return {};
  const Explained& best = results.survey->explanations.front();
  if (best.readings.empty()) return {};
  Canvas canvas;
  const double top = draw_heading(
      canvas, results.title,
      fmt::format("What was read (numbers), and where 9 in 10 readings would lie if \"{}\" (bars)",
                  name_of(*results.survey, best.what)));
  const double bottom = ReadingsChart(results.variants.front(), best, top + 46.0).draw(canvas);
  return {std::move(canvas), bottom + 8.0,
          fmt::format("{}: readings in their ranges", results.title),
          description_of(*results.survey)};
}

}  // namespace quoin::tools
