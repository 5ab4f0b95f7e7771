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
constexpr double label_pitch = 31.0;  ///< from label to label
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
        top + std::max(240.0, label_pitch * static_cast<double>(best.readings.size()) + 12.0);
    if (surface_) axes_.x = {surface_->along.front(), surface_->along.back()};
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
      end = draw_places(canvas, axes_, named_stretches(variant_, *surface_), 0.0, taken);
    }
    canvas.rectangle({left, axes_.top}, right - left, axes_.bottom - axes_.top, {{}, {black, 0.9}});
    if (axes_.right < right - 1.0) {
      canvas.text({right, axes_.bottom + 18.0}, surface_ ? "elsewhere" : "",
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
                {10.0, Anchor::middle, 0.0, true, colour, {}});
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

/// Bars of how many times worse each explanation fits than the best, with the region in which
/// readings cannot tell. Returns where it ends.
double draw_odds(Canvas& canvas, const std::vector<Explained>& all, double top) {
  constexpr double names = 250.0, most = 1000.0, pitch = 24.0;
  constexpr double from = page_edge + names, to = page_width - page_edge - 12.0;
  const auto across = [&](double odds) {
    return from + std::log10(std::clamp(odds, 1.0, most)) / std::log10(most) * (to - from);
  };
  const double begin = top + 36.0, end = begin + pitch * static_cast<double>(all.size());
  canvas.text({page_edge, top}, "How many times worse each explanation fits than the best",
              {12.5, Anchor::start, 0.0, true, black, {}});
  canvas.rectangle({from, begin}, across(3.0) - from, end - begin, {Colour{0x484848}, {}, 0.18});
  canvas.rectangle({across(3.0), begin}, across(10.0) - across(3.0), end - begin,
                   {Colour{0x484848}, {}, 0.07});
  canvas.text({(from + across(3.0)) / 2, begin - 5.0}, "cannot tell",
              {10.5, Anchor::middle, 0.0, false, grey, {}});
  canvas.text({across(std::sqrt(30.0)), begin - 5.0}, "fits worse",
              {10.5, Anchor::middle, 0.0, false, grey, {}});
  canvas.text({across(100.0), begin - 5.0}, "fits far worse",
              {10.5, Anchor::middle, 0.0, false, grey, {}});
  for (const double odds : {1.0, 3.0, 10.0, 30.0, 100.0, 300.0, 1000.0}) {
    canvas.line({across(odds), begin}, {across(odds), end}, {{0xa4a4a4}, 0.6});
    canvas.text({across(odds), end + 15.0},
                odds < most ? fmt::format("{:.0f}", odds) : std::string("more"),
                {11.0, Anchor::middle, 0.0, false, black, {}});
  }
  double y = begin;
  for (const Explained& one : all) {
    const double odds = std::exp(-one.log_odds);
    canvas.text({from - 10.0, y + 16.0}, fitted(name_of(one.what), 11.5, names - 14.0),
                {11.5, Anchor::end, 0.0, &one == all.data(), black, {}});
    if (&one == all.data()) {
      canvas.circle({from, y + pitch / 2}, 5.5, {as_expected, {}});
    } else {
      canvas.rectangle({from, y + 6.0}, std::max(2.0, across(odds) - from), pitch - 12.0,
                       {range_colour, {}});
    }
    y += pitch;
  }
  return end + 22.0;
}

/// Words over as many lines as they need. Returns where they end.
double draw_words(Canvas& canvas, const std::string& words, double y) {
  constexpr std::size_t most_lines = 6;
  for (const std::string& line : wrapped(words, 12.0, page_width - 2 * page_edge, most_lines)) {
    canvas.text({page_edge, y}, line, {12.0, Anchor::start, 0.0, false, black, {}});
    y += 16.0;
  }
  return y;
}

std::string description_of(const SurveyFindings& findings) {
  const Explained& best = findings.explanations.front();
  std::string words = fmt::format("Readings beside what \"{}\" expects.", name_of(best.what));
  for (const ExpectedReading& one : best.readings) {
    words += fmt::format(
        " {}: {:.1f}, {}.", one.probe, one.read,
        !counts(one) ? "left out" : fmt::format("expected {:.1f} to {:.1f}", one.low, one.high));
  }
  for (const Explained& one : findings.explanations)
    words += fmt::format(" {}: {}.", name_of(one.what), odds_words(one.log_odds));
  return words;
}

}  // namespace

Picture drawn_readings(const Results& results) {
  if (!results.survey || results.variants.empty() || results.survey->explanations.empty())
    return {};
  const SurveyFindings& findings = *results.survey;
  const Explained& best = findings.explanations.front();
  Canvas canvas;
  const std::string line =
      best.readings.empty()
          ? "How the explanations fit"
          : fmt::format(
                "What was read (numbers), and where 9 in 10 readings would lie if \"{}\" "
                "(bars)",
                name_of(best.what));
  double bottom = draw_heading(canvas, results.title, line);
  if (!best.readings.empty())
    bottom = ReadingsChart(results.variants.front(), best, bottom + 46.0).draw(canvas) + 12.0;
  bottom = draw_odds(canvas, findings.explanations, bottom + 24.0);
  if (!findings.next.empty())
    bottom = draw_words(canvas, findings.next.front().words, bottom + 18.0);
  bottom = draw_words(canvas, std::string(within_no_standard), bottom + 18.0);
  return {std::move(canvas), bottom, fmt::format("{}: what the readings tell", results.title),
          description_of(findings)};
}

}  // namespace quoin::tools
