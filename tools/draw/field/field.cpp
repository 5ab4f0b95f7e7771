// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/field/field.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "tools/draw/field/field_drawing.hpp"
#include "tools/draw/section/sheet.hpp"

namespace quoin::tools {
namespace {

constexpr double bar_room = 62.0;  ///< for the colours beside the drawing, units

/// The section as large as there is room for below `top`, no larger than `scale`.
View view_of(const SolvedVariant& solved, double top, double scale) {
  return View(shown_part(solved.variant, solved.surface.field.mesh.section), {page_edge, top},
              page_width - 2 * page_edge - bar_room, 520.0, scale);
}

/// The coldest and the warmest temperature of the material, degC.
std::pair<double, double> range_of(const SolvedVariant& solved) {
  std::pair<double, double> range{1e9, -1e9};
  const solver::Solution& surface = solved.surface;
  for (std::size_t n = 0; n < surface.temperature.size(); ++n) {
    if (surface.field.solid[n] == 0) continue;
    range.first = std::min(range.first, surface.temperature[n]);
    range.second = std::max(range.second, surface.temperature[n]);
  }
  return range;
}

/// What a limit means here, in words.
std::string meaning_of(const Limit& limit, const std::string& words, double coldest,
                       double warmest) {
  const std::string reach = limit.temperature > warmest   ? " (all the material is colder)"
                            : limit.temperature < coldest ? " (all the material is warmer)"
                                                          : "";
  return fmt::format("{}{}: {}", words, reach, limit.meaning);
}

/// What the marks mean, one a line. Returns where it ends.
double draw_key(Canvas& canvas, const SolvedVariant& solved, double top) {
  Point at{page_edge, top};
  const auto entry = [&](std::string_view words) { at.y = draw_key_words(canvas, at, words); };
  const auto [coldest, warmest] = range_of(solved);
  for (const Limit& limit : limits_of(solved)) {
    canvas.line(at, {at.x + 38.0, at.y}, stroke_of(limit));
    entry(meaning_of(limit, words_in(solved, limit), coldest, warmest));
  }
  draw_coldest_mark(canvas, {at.x + 19.0, at.y});
  entry("coldest spot of the inside surface");
  return at.y;
}

std::vector<std::string> probe_words(const SolvedVariant& solved) {
  std::vector<std::string> words;
  for (const solver::ProbeValue& probe : solved.surface.probes) {
    words.push_back(fmt::format("{:.1f} °C", probe.temperature.value));
  }
  return words;
}

}  // namespace

double field_scale(const Results& results) {
  double scale = any_scale;
  for (const SolvedVariant& solved : results.variants)
    scale = std::min(scale, view_of(solved, 0.0, scale).scale());
  return scale;
}

Picture drawn_field(const SolvedVariant& solved, std::string_view title, double scale) {
  Canvas canvas;
  const double top =
      draw_heading(canvas, title, fmt::format("Temperature, {}", solved.variant.name));
  const geometry::Section& section = solved.surface.field.mesh.section;
  const View view = view_of(solved, top, scale);

  TakenRoom taken;
  const Bands bands = bands_of(solved.variant);
  FieldDrawing drawing(solved, view, bands);
  const std::vector<SpaceId> unnamed = draw_spaces(canvas, view, solved.variant, true, taken);
  drawing.draw_bands(canvas);
  draw_edges(canvas, view, solved.variant.regions.size(), {black, 0.9});
  draw_cuts(canvas, view);

  // What is drawn on top takes its room first.
  Canvas marks, limits;
  Callouts callouts(view, solved.variant, taken);
  drawing.draw_coldest(marks, callouts, taken);
  draw_probes(marks, view, solved.variant, probe_words(solved), callouts, taken);
  call_out_spaces(callouts, view, solved.variant, unnamed);
  drawing.draw_limits(limits, taken, true);
  drawing.draw_isotherms(canvas, taken);
  canvas.append(limits);
  callouts.draw(canvas);
  canvas.append(marks);

  const double bar = std::min(view.height() - 40.0, 360.0);
  draw_colour_bar(canvas, bands, {view.corner().x + view.width() + 14.0, view.corner().y + 30.0},
                  bar);
  double bottom = view.corner().y + std::max(view.height(), bar + 40.0) + 20.0;
  bottom = draw_key(canvas, solved, bottom);
  draw_scale_bar(canvas, view, {page_edge, bottom});
  bottom = draw_whole_beside(canvas, solved.variant, view, section,
                             view.corner().x + view.width() + bar_room + 12.0, bottom + 24.0);
  return {std::move(canvas), bottom, fmt::format("{}: temperature, {}", title, solved.variant.name),
          fmt::format("{} {}", description_of(solved.variant), solved.summary)};
}

}  // namespace quoin::tools
