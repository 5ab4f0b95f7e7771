// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/field/flow.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "solver/stream.hpp"
#include "tools/draw/canvas/hatch.hpp"
#include "tools/draw/field/field_drawing.hpp"
#include "tools/draw/section/sheet.hpp"
#include "tools/physics.hpp"

namespace quoin::tools {
namespace {

constexpr double smooth = 5.0;    ///< longest straight piece of a line, units
constexpr std::size_t most = 24;  ///< lines in one picture
constexpr Stroke isotherm_stroke{{0x5c5c5c}, 0.7, {2, 2.5}};
constexpr Stroke flow_stroke{{0x8c2f00}, 1.5};

/// The section as large as there is room for below `top`, no larger than `scale`.
View view_of(Shown shown, double top, double scale) {
  return View(std::move(shown), {page_edge, top}, page_width - 2 * page_edge, 520.0, scale);
}

solver::Stream stream_of(const SolvedVariant& solved) {
  return solver::stream_of(solved.heat, temperatures_of(solved.variant));
}

double highest(const solver::Stream& stream) {
  return stream.value.empty() ? 0.0 : *std::max_element(stream.value.begin(), stream.value.end());
}

/// What flows in from the side of all rooms, W/m.
double flow_in(const SolvedVariant& solved) {
  double sum = 0.0;
  for (const double flow : solved.heat.flows) sum += std::max(flow, 0.0);
  return sum;
}

/// The mesh with the cells left out in which lines are cut.
geometry::Mesh without_cut(geometry::Mesh mesh, const std::vector<char>& is_cut) {
  if (is_cut.empty()) return mesh;
  std::vector<geometry::Cell> cells;
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      cells.push_back(is_cut[j * mesh.columns() + i] != 0 ? geometry::Cell{} : mesh.cell(i, j));
    }
  }
  mesh.cells = std::move(cells);
  return mesh;
}

std::vector<double> flow_levels(double from_above, double step) {
  std::vector<double> levels;
  for (double k = 1.0; k * step < from_above * (1.0 - 1e-9); ++k) levels.push_back(k * step);
  return levels;
}

/// An arrow head in the middle of a line, pointing onwards.
void draw_arrow(Canvas& canvas, const Line& line) {
  double length = 0.0;
  for (std::size_t k = 1; k < line.size(); ++k) {
    length += std::hypot(line[k].x - line[k - 1].x, line[k].y - line[k - 1].y);
  }
  if (length < 24.0) return;
  double rest = length / 2;
  for (std::size_t k = 1; k < line.size(); ++k) {
    const Point from = line[k - 1], to = line[k];
    const double piece = std::hypot(to.x - from.x, to.y - from.y);
    if (piece < rest || piece == 0.0) {
      rest -= piece;
      continue;
    }
    const Point way{(to.x - from.x) / piece, (to.y - from.y) / piece};
    const Point tip{from.x + way.x * (rest + 5.0), from.y + way.y * (rest + 5.0)};
    constexpr double deep = 9.0, half = 3.4;
    const Point foot{tip.x - way.x * deep, tip.y - way.y * deep};
    canvas.area({{tip,
                  {foot.x - way.y * half, foot.y + way.x * half},
                  {foot.x + way.y * half, foot.y - way.x * half}}},
                {flow_stroke.colour, {}});
    return;
  }
}

void draw_materials(Canvas& canvas, const View& view, const SolvedVariant& solved) {
  const Looks looks(solved.variant.regions);
  for (const RegionId id : geometry::ids(solved.variant.regions)) {
    const auto shape = view(outlines(
        view.section(), [&](const geometry::Fill& fill) { return fill == geometry::Fill{id}; }));
    if (shape.empty()) continue;
    canvas.area(shape, {looks[id].ground, {}});
  }
}

void draw_lines(Canvas& canvas, const View& view, const MeshValues& field,
                const std::vector<double>& levels, const Stroke& stroke, bool arrows) {
  const FineField fine = refined(field.mesh, field.values, smooth / view.scale());
  for (const Isotherm& isotherm : IsothermFinder(fine.mesh).isotherms(fine.values, levels)) {
    for (const Line& line : drawn(view, isotherm.lines)) {
      canvas.polyline(line, stroke);
      if (arrows) draw_arrow(canvas, line);
    }
  }
}

/// What the lines mean. Returns where it ends.
double draw_key(Canvas& canvas, const SolvedVariant& solved, double step, double isotherms,
                bool is_cut, double top) {
  Point at{page_edge, top};
  const auto entry = [&](const std::string& words) { at.y = draw_key_words(canvas, at, words); };
  const Line sample{at, {at.x + 38.0, at.y}};
  canvas.polyline(sample, flow_stroke);
  draw_arrow(canvas, sample);
  const std::string_view across =
      solved.variant.cut == cases::Cut::horizontal ? "height" : "length";
  entry(fmt::format("the way heat takes; between two lines flow {:g} W per metre of {}", step,
                    across));
  canvas.line(at, {at.x + 38.0, at.y}, isotherm_stroke);
  entry(fmt::format("isotherms, every {:g} K", isotherms));
  entry(fmt::format("in all {:.1f} W per metre of {}, with the surface resistances for heat flow",
                    flow_in(solved), across));
  if (is_cut) entry("a hollow takes up or gives off heat: beside it the lines are cut");
  return at.y;
}

}  // namespace

double flow_step(const Results& results) {
  double largest = 0.0;
  for (const SolvedVariant& solved : results.variants) {
    largest = std::max(largest, highest(stream_of(solved)));
  }
  constexpr double nothing = 1e-6;  // W/m: rounding where all is equally warm
  if (largest < nothing) return 0.0;
  const std::vector<double> levels = round_levels(0.0, largest, most);
  return levels.empty() ? 0.0 : levels.front();
}

double flow_scale(const Results& results) {
  double scale = any_scale;
  for (const SolvedVariant& solved : results.variants) {
    const Shown shown = shown_part(solved.variant, solved.heat.field.mesh.section);
    scale = std::min(scale, view_of(shown, 0.0, scale).scale());
  }
  return scale;
}

Picture drawn_flow(const SolvedVariant& solved, double step, std::string_view title, double scale) {
  const solver::Stream stream = stream_of(solved);
  if (!(step > 0.0) || highest(stream) == 0.0) return {};
  Canvas canvas;
  const double top = draw_heading(canvas, title, fmt::format("Heat flow, {}", solved.variant.name));
  const geometry::Mesh& mesh = solved.heat.field.mesh;
  const Shown shown = shown_part(solved.variant, mesh.section);
  const View view = view_of(shown, top, scale);

  TakenRoom taken;
  const std::vector<SpaceId> unnamed = draw_spaces(canvas, view, solved.variant, true, taken);
  draw_materials(canvas, view, solved);
  const Bands bands = bands_of(solved.variant);
  draw_lines(canvas, view, shown_part(shown, mesh, solved.heat.temperature), bands.levels,
             isotherm_stroke, false);
  draw_edges(canvas, view, solved.variant.regions.size(), {black, 0.9});
  draw_lines(canvas, view, shown_part(shown, without_cut(mesh, stream.is_cut), stream.value),
             flow_levels(highest(stream), step), flow_stroke, true);
  draw_cuts(canvas, view);
  Callouts callouts(view, solved.variant, taken);
  call_out_spaces(callouts, view, solved.variant, unnamed);
  callouts.draw(canvas);

  double bottom = view.corner().y + view.height() + 22.0;
  bottom = draw_key(canvas, solved, step, bands.step(), !stream.is_cut.empty(), bottom);
  draw_scale_bar(canvas, view, {page_edge, bottom});
  bottom = draw_whole_beside(canvas, solved.variant, view, mesh.section,
                             view.corner().x + view.width() + 24.0, bottom + 24.0);
  return {std::move(canvas), bottom, fmt::format("{}: heat flow, {}", title, solved.variant.name),
          fmt::format("{} In all {:.1f} W/m flow through it; between two flow lines {:g} W/m.",
                      description_of(solved.variant), flow_in(solved), step)};
}

}  // namespace quoin::tools
