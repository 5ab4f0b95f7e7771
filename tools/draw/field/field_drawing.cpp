// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/field/field_drawing.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>

#include "tools/draw/field/labels.hpp"
#include "tools/draw/section/rooms.hpp"

namespace quoin::tools {
namespace {

constexpr double tolerance = 0.08;  ///< how far a drawn line may leave the isotherm, units

std::optional<std::size_t> strip(const std::vector<double>& lines, double at) {
  if (at <= lines.front() || at >= lines.back()) return std::nullopt;
  return static_cast<std::size_t>(std::upper_bound(lines.begin(), lines.end(), at) -
                                  lines.begin()) -
         1;
}

/// The field as far as the picture shows it, fine enough to be drawn.
FineField fine_part(const SolvedVariant& solved, const View& view, double longest) {
  const geometry::Mesh& mesh = solved.surface.field.mesh;
  const MeshValues part =
      shown_part(shown_part(solved.variant, mesh.section), mesh, solved.surface.temperature);
  return refined(part.mesh, part.values, longest / view.scale());
}

}  // namespace

std::vector<Line> drawn(const View& view, const std::vector<geometry::Outline>& outlines) {
  std::vector<Line> lines;
  for (const geometry::Outline& outline : outlines) {
    Line line = simplified(view(outline), tolerance);
    if (line.size() > 1) lines.push_back(std::move(line));
  }
  return lines;
}

std::string words_in(const SolvedVariant& solved, const Limit& limit) {
  if (solved.humidity.size() < 2) return words_for(limit);
  return fmt::format("{}, {}", words_for(limit),
                     fitted(solved.variant.spaces[limit.air].name, 12.0, 90.0));
}

FieldDrawing::FieldDrawing(const SolvedVariant& solved, const View& view, Bands bands,
                           double longest)
    : solved_(solved),
      view_(view),
      bands_(std::move(bands)),
      fine_(fine_part(solved, view, longest)),
      finder_(fine_.mesh) {}

void FieldDrawing::draw_bands(Canvas& canvas) {
  const auto solid = view_(outlines(view_.section(), [](const geometry::Fill& fill) {
    return std::holds_alternative<RegionId>(fill);
  }));
  isotherms_ = finder_.isotherms(fine_.values, bands_.levels);
  canvas.area(solid, {shown(bands_.colour(0)), {}});
  for (std::size_t k = 0; k < isotherms_.size(); ++k) {
    const std::vector<Line> warmer = drawn(view_, isotherms_[k].warmer);
    if (!warmer.empty()) {
      canvas.area(warmer, {shown(bands_.colour(k + 1)), {}});
    }
  }
}

void FieldDrawing::draw_isotherms(Canvas& canvas, TakenRoom& taken, double size) const {
  for (std::size_t k = 0; k < isotherms_.size(); ++k) {
    const double level = isotherms_[k].level;
    const std::string words = figure_of(level);
    const auto allowed = [&](const Box& box) {
      return lies_between(box, level, 0.7 * bands_.step());
    };
    const LabelledLine line = labelled(drawn(view_, isotherms_[k].lines), words, size,
                                       size > 0.0 ? Allowed(allowed) : Allowed(), taken);
    const Colour ink = ink_on(bands_.colour(k));
    for (const Line& piece : line.pieces) canvas.polyline(piece, {ink, 0.8});
    if (line.labelled) {
      canvas.text(line.at, words, {size, Anchor::middle, line.turn, false, ink, {}});
    }
  }
}

void FieldDrawing::draw_limits(Canvas& canvas, TakenRoom& taken, bool named) const {
  constexpr double size = 12.0;
  const std::vector<Limit> limits = limits_of(solved_);
  std::vector<double> levels;
  for (const Limit& limit : limits) levels.push_back(limit.temperature);
  const std::vector<Isotherm> found = finder_.isotherms(fine_.values, levels);
  for (std::size_t l = 0; l < limits.size(); ++l) {
    const Limit& limit = limits[l];
    double clear = bands_.high - bands_.low;  // of the other limits, K
    for (const Limit& other : limits) {
      const double apart = std::abs(other.temperature - limit.temperature);
      if (apart > 0.0) clear = std::min(clear, apart);
    }
    const std::string words = words_in(solved_, limit);
    const auto allowed = [&](const Box& box) {
      return lies_between(box, limit.temperature, 0.7 * clear);
    };
    const LabelledLine line = labelled(drawn(view_, found[l].lines), words, size,
                                       named ? Allowed(allowed) : Allowed(), taken);
    for (const Line& piece : line.pieces) canvas.polyline(piece, {white, 4.4, {}, Ends::round});
    for (const Line& piece : line.pieces) {
      canvas.polyline(piece, stroke_of(limit));
      for (std::size_t k = 1; k < piece.size(); ++k) taken.take(piece[k - 1], piece[k]);
    }
    if (line.labelled) {
      canvas.text(line.at, words, {size, Anchor::middle, line.turn, true, limit_colour, white});
    }
  }
}

void FieldDrawing::draw_coldest(Canvas& canvas, Callouts& callouts, TakenRoom& taken) const {
  for (const solver::AirSurface& air : solved_.surface.airs) {
    if (solved_.variant.spaces[air.air].is != cases::SpaceKind::inside) continue;
    if (!view_.shows(air.coldest.place)) continue;
    const Point at = view_(air.coldest.place);
    draw_coldest_mark(canvas, at);
    taken.take(Box{at, 12.0, 12.0, 0.0});
    callouts.add(at, towards(air.air, at),
                 fmt::format("coldest {:.1f} °C", air.coldest.temperature.value));
  }
}

/// Whether a box lies in the material, where the field is no further than `most` from a level.
bool FieldDrawing::lies_between(const Box& box, double level, double most) const {
  const geometry::Mesh& mesh = solved_.surface.field.mesh;
  const double angle = box.turn * 3.141592653589793 / 180.0;
  for (const double u : {-0.5, 0.0, 0.5}) {
    for (const double v : {-0.5, 0.5}) {
      const double dx = u * box.width, dy = v * box.height;
      const Point place =
          view_.place_of({box.centre.x + dx * std::cos(angle) + dy * std::sin(angle),
                          box.centre.y - dx * std::sin(angle) + dy * std::cos(angle)});
      const auto column = strip(mesh.x, place.x), row = strip(mesh.y, place.y);
      if (!column || !row || !view_.shows(place)) return false;
      if (!std::holds_alternative<RegionId>(mesh.cell(*column, *row).below)) return false;
      const double here =
          solver::temperature_at(solved_.surface.field, solved_.surface.temperature, place);
      if (std::abs(here - level) > most) return false;
    }
  }
  return true;
}

/// The way from a place on a surface into its air.
Point FieldDrawing::towards(SpaceId air, Point at) const {
  Point way{1.0, -1.0};
  double nearest = 1e9;
  for (const SpaceId id : geometry::ids(solved_.variant.spaces)) {
    const std::optional<Box> room =
        solved_.variant.spaces[id].air == air ? room_of(view_, id) : std::nullopt;
    if (!room) continue;
    const Point to{room->centre.x - at.x, room->centre.y - at.y};
    const double distance = std::hypot(to.x, to.y);
    if (distance > 0.0 && distance < nearest) {
      nearest = distance;
      way = {to.x / distance, to.y / distance};
    }
  }
  return way;
}

}  // namespace quoin::tools
