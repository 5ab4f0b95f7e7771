// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/field/compare.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

#include "tools/answer/find/places.hpp"
#include "tools/answer/judge/judge.hpp"
#include "tools/answer/judge/outcome.hpp"
#include "tools/answer/words/figures.hpp"
#include "tools/answer/words/outcome_words.hpp"
#include "tools/draw/canvas/strokes.hpp"
#include "tools/draw/field/field_drawing.hpp"
#include "tools/draw/section/sheet.hpp"

namespace quoin::tools {
namespace {

constexpr double gap = 20.0;  ///< between cells, units
constexpr double line_height = 15.0;
const Lettering name_letters{12.0, Anchor::start, 0.0, true, black, {}};
const Lettering letters{11.5, Anchor::start, 0.0, false, black, {}};

Shown shown_of(const SolvedVariant& solved) {
  return shown_part(solved.variant, solved.surface.field.mesh.section);
}

/// How variants are laid out: as many in a row as stay large enough, all to one scale.
struct Layout {
  std::size_t columns = 2;
  double width = 0.0;  ///< of a cell, units
  double scale = 0.0;  ///< units in a metre
};

Layout layout_of(const Results& results) {
  Layout layout;
  const Extent first = material_extent(shown_of(results.variants.front()).section);
  const bool is_wide = first.width() > 1.6 * first.height();
  layout.columns = is_wide || results.variants.size() == 2 ? 2 : 3;
  const auto columns = static_cast<double>(layout.columns);
  layout.width = (page_width - 2 * page_edge - (columns - 1) * gap) / columns;
  // Many rows are lower, so that all stand on a printed page with letters that can be read.
  constexpr double page = 1100.0, caption = 120.0, lowest = 60.0, tallest = 230.0;  // units
  const double rows = std::ceil(static_cast<double>(results.variants.size()) / columns);
  const double height = std::clamp(page / rows - caption, lowest, tallest);
  layout.scale = std::numeric_limits<double>::max();
  for (const SolvedVariant& solved : results.variants) {
    const View view(shown_of(solved), {0.0, 0.0}, layout.width, height);
    layout.scale = std::min(layout.scale, view.scale());
  }
  return layout;
}

/// The section to a given scale, its top left corner at `corner`.
View view_of(const SolvedVariant& solved, Point corner, double scale) {
  const View any(shown_of(solved), corner, page_width, page_width);
  const Margins& margins = any.margins();
  return View(shown_of(solved), corner,
              any.material().width() * scale + margins.left + margins.right,
              any.material().height() * scale + margins.above + margins.below);
}

/// A sign whose shape and not only its colour tells good from bad.
void draw_sign(Canvas& canvas, Point centre, Tone tone) {
  const double x = centre.x, y = centre.y;
  constexpr Stroke sign{white, 1.8, {}, Ends::round};
  switch (tone) {
    case Tone::bad:
      canvas.rectangle({x - 7.0, y - 7.0}, 14.0, 14.0, {Colour{0x8f1d2c}, {}}, 2.0);
      canvas.line({x - 3.4, y - 3.4}, {x + 3.4, y + 3.4}, sign);
      canvas.line({x - 3.4, y + 3.4}, {x + 3.4, y - 3.4}, sign);
      break;
    case Tone::doubtful:
      canvas.area({{{x, y - 8.0}, {x + 8.5, y + 7.0}, {x - 8.5, y + 7.0}}}, {Colour{0x8a5a00}, {}});
      canvas.line({x, y - 2.5}, {x, y + 1.5}, sign);
      canvas.circle({x, y + 4.7}, 1.1, {white, {}});
      break;
    case Tone::good:
      canvas.circle(centre, 7.5, {Colour{0x1f5c33}, {}});
      canvas.polyline({{x - 3.6, y}, {x - 1.0, y + 2.9}, {x + 3.8, y - 3.0}}, sign);
      break;
    default:
      canvas.circle(centre, 7.0, {white, {black, 1.2}});
  }
}

/// The words under one variant.
class Caption {
 public:
  Caption(const SolvedVariant& solved, double width)
      : names_(wrapped(solved.variant.name, bold_width * name_letters.size, width - 22.0, 3)) {
    const Outcome* worst = worst_outcome(solved);
    if (worst == nullptr) return;
    tone_ = tone_of(worst->kind);
    verdict_ = wrapped(badge(*worst), bold_width * name_letters.size, width - 22.0, 2);
    const solver::Spot& spot = surface_of(solved, worst->space).coldest;
    std::string words =
        fmt::format("coldest {} °C, {}", fixed(spot.temperature.value, 1), words_for(solved, spot));
    if (solved.outcomes.size() > 1) {
      words = fmt::format("{}: {}", fitted(solved.variant.spaces[worst->space].name, 11.5, 90.0),
                          words);
    }
    lines_ = wrapped(words, letters.size, width, 2);
    if (!std::isfinite(spot.factor.value)) return;
    const AirHumidity* air = humidity_of(solved, worst->space);
    std::vector<double> factors{spot.factor.value};
    if (worst->unit == "1") factors.push_back(*worst->limit);
    if (air != nullptr && std::isfinite(air->factor_needed)) factors.push_back(air->factor_needed);
    const int decimals = decimals_for(factors, 2);
    std::string factor = "fRsi " + fixed(spot.factor.value, decimals);
    if (worst->unit == "1") factor += ", asked for " + fixed(*worst->limit, decimals);
    if (air != nullptr && std::isfinite(air->factor_needed))
      factor += ", this air needs " + fixed(air->factor_needed, decimals);
    for (std::string& line : wrapped(factor, letters.size, width, 2))
      lines_.push_back(std::move(line));
  }

  [[nodiscard]] double height() const {
    return line_height * static_cast<double>(names_.size() + lines_.size() + verdict_.size()) +
           14.0;
  }

  void draw(Canvas& canvas, std::size_t variant, Point at) const {
    double y = at.y + 16.0;
    draw_badge(canvas, {at.x + badge_radius, y - 4.0}, variant);
    for (const std::string& name : names_) {
      canvas.text({at.x + 22.0, y}, name, name_letters);
      y += line_height;
    }
    y += 4.0;
    draw_sign(canvas, {at.x + badge_radius, y - 4.0}, tone_);
    for (const std::string& line : verdict_) {
      canvas.text({at.x + 22.0, y}, line, name_letters);
      y += line_height;
    }
    y -= line_height;
    for (const std::string& line : lines_)
      canvas.text({at.x, y += line_height + 1.0}, line, letters);
  }

 private:
  std::vector<std::string> names_;
  std::vector<std::string> lines_;
  std::vector<std::string> verdict_{"not judged"};
  Tone tone_ = Tone::plain;
};

void draw_small_field(Canvas& canvas, const SolvedVariant& solved, const View& view,
                      const Bands& bands) {
  FieldDrawing drawing(solved, view, bands);
  TakenRoom taken;
  tint_spaces(canvas, view, solved.variant);
  drawing.draw_bands(canvas);
  draw_edges(canvas, view, solved.variant.regions.size(), {black, 0.7});
  draw_breaks(canvas, view);
  drawing.draw_limits(canvas, taken, false);
  for (const solver::AirSurface& air : solved.surface.airs) {
    if (solved.variant.spaces[air.air].is == cases::SpaceKind::inside &&
        view.shows(air.coldest.place)) {
      draw_coldest_mark(canvas, view(air.coldest.place));
    }
  }
}

/// What the lines and marks mean. Returns where it ends.
double draw_key(Canvas& canvas, const Results& results, double top) {
  Point at{page_edge, top};
  const auto entry = [&](const std::string& words) { at.y = draw_key_words(canvas, at, words); };
  std::vector<std::string_view> known;
  for (const SolvedVariant& solved : results.variants) {
    for (const Limit& limit : limits_of(solved)) {
      if (std::find(known.begin(), known.end(), limit.what) != known.end()) continue;
      known.push_back(limit.what);
      canvas.line(at, {at.x + 38.0, at.y}, stroke_of(limit));
      entry(fmt::format("{}: {}", limit.what, limit.meaning));
    }
  }
  draw_coldest_mark(canvas, {at.x + 19.0, at.y});
  entry("coldest spot of the inside surface");
  return at.y;
}

std::string description_of(const Results& results) {
  std::string words = "The temperatures of all variants side by side.";
  for (const SolvedVariant& solved : results.variants) {
    words += fmt::format(" {}: {}", fitted(solved.variant.name, 1.0, 60.0), solved.summary);
  }
  return words;
}

}  // namespace

Picture drawn_compare(const Results& results) {
  if (results.variants.size() < 2) return {};
  Canvas canvas;
  double top = draw_heading(canvas, results.title, "Variants side by side: temperature");
  const Layout layout = layout_of(results);
  const Bands bands = bands_of(results.variants);
  for (std::size_t first = 0; first < results.variants.size(); first += layout.columns) {
    const std::size_t last = std::min(first + layout.columns, results.variants.size());
    const auto left = [&](std::size_t v) {
      return page_edge + static_cast<double>(v - first) * (layout.width + gap);
    };
    double foot = top;
    for (std::size_t v = first; v < last; ++v) {
      const View view = view_of(results.variants[v], {left(v), top}, layout.scale);
      draw_small_field(canvas, results.variants[v], view, bands);
      foot = std::max(foot, view.corner().y + view.height());
    }
    double height = 0.0;
    for (std::size_t v = first; v < last; ++v) {
      const Caption caption(results.variants[v], layout.width);
      caption.draw(canvas, v, {left(v), foot});
      height = std::max(height, caption.height());
    }
    top = foot + height + 14.0;
  }
  draw_lying_colour_bar(canvas, bands, {page_edge, top}, 300.0);
  double bottom = draw_key(canvas, results, top + 52.0);
  const SolvedVariant& first_variant = results.variants.front();
  bottom = draw_whole(canvas, first_variant.variant, first_variant.surface.field.mesh.section,
                      {page_edge, bottom}, page_width - 2 * page_edge);
  return {std::move(canvas), bottom, fmt::format("{}: variants side by side", results.title),
          description_of(results)};
}

}  // namespace quoin::tools
