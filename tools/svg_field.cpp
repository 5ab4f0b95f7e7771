// SPDX-License-Identifier: Apache-2.0
#include "tools/svg_field.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <map>

#include "tools/svg_colours.hpp"
#include "tools/svg_isotherm_labels.hpp"
#include "tools/svg_isotherms.hpp"
#include "tools/svg_limits.hpp"
#include "tools/svg_sheet.hpp"
#include "tools/svg_smoothing.hpp"

namespace quoin::tools {
namespace {

constexpr double smooth = 5.0;      ///< longest straight piece of a curve, units
constexpr double tolerance = 0.08;  ///< how far a drawn line may leave the isotherm, units

/// The scale of temperatures: from the coldest to the warmest space, so that variants in the same
/// climate have the same colours.
struct Bands {
  double low = 0.0;
  double high = 0.0;
  std::vector<double> levels;

  /// Band k lies below level k, the last above all levels.
  [[nodiscard]] Lab colour(std::size_t k) const {
    const double from = k == 0 ? low : levels[k - 1];
    const double to = k == levels.size() ? high : levels[k];
    return temperature_colour(((from + to) / 2 - low) / (high - low));
  }
  [[nodiscard]] double step() const {
    return levels.size() > 1 ? levels[1] - levels[0] : high - low;
  }
};

Bands bands_of(const cases::Variant& variant) {
  Bands bands{1e9, -1e9, {}};
  for (const cases::Space& space : variant.spaces) {
    bands.low = std::min(bands.low, space.temperature);
    bands.high = std::max(bands.high, space.temperature);
  }
  if (bands.high - bands.low < 0.01) {  // the same everywhere: still a picture
    bands.low -= 0.5;
    bands.high += 0.5;
  }
  constexpr std::size_t most = 11;
  bands.levels = round_levels(bands.low, bands.high, most);
  return bands;
}

/// The name of a limit in this variant, with its air where there are several.
std::string words_in(const SolvedVariant& solved, const Limit& limit) {
  if (solved.humidity.size() < 2) return words_for(limit);
  return fmt::format("{}, {}", words_for(limit),
                     fitted(solved.variant.spaces[limit.air].name, 12.0, 90.0));
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

/// One variant on its way onto the picture.
class FieldDrawing {
 public:
  FieldDrawing(const SolvedVariant& solved, const View& view)
      : solved_(solved),
        view_(view),
        bands_(bands_of(solved.variant)),
        fine_(
            refined(solved.surface.field.mesh, solved.surface.temperature, smooth / view.scale())),
        finder_(fine_.mesh) {}

  [[nodiscard]] const Bands& bands() const { return bands_; }

  void draw_bands(Canvas& canvas) {
    const auto solid = view_(outlines(view_.section(), [](const geometry::Fill& fill) {
      return std::holds_alternative<RegionId>(fill);
    }));
    isotherms_ = finder_.isotherms(fine_.values, bands_.levels);
    canvas.open("stroke=\"none\"");
    canvas.area(solid, fmt::format("fill=\"{}\"", hex(bands_.colour(0))));
    for (std::size_t k = 0; k < isotherms_.size(); ++k) {
      const std::vector<Line> warmer = drawn(isotherms_[k].warmer);
      if (!warmer.empty()) {
        canvas.area(warmer, fmt::format("fill=\"{}\"", hex(bands_.colour(k + 1))));
      }
    }
    canvas.close();
  }

  void draw_isotherms(Canvas& canvas, TakenRoom& taken) const {
    constexpr double size = 11.5;
    for (std::size_t k = 0; k < isotherms_.size(); ++k) {
      const double level = isotherms_[k].level;
      const std::string words = fmt::format("{:g}", std::round(level * 1000.0) / 1000.0);
      const LabelledLine line = labelled(
          drawn(isotherms_[k].lines), words, size,
          [&](const Box& box) { return lies_between(box, level, 0.7 * bands_.step()); }, taken);
      const std::string_view ink = ink_on(bands_.colour(k));
      canvas.open(fmt::format("fill=\"none\" stroke=\"{}\" stroke-width=\"0.8\"", ink));
      for (const Line& piece : line.pieces) canvas.polyline(piece);
      canvas.close();
      if (line.labelled) {
        canvas.text(line.at, words, {size, Anchor::middle, line.turn, false, ink, ""});
      }
    }
  }

  void draw_limits(Canvas& canvas, TakenRoom& taken) const {
    constexpr double size = 12.0;
    const std::vector<Limit> limits = limits_of(solved_);
    for (const Limit& limit : limits) {
      double clear = bands_.high - bands_.low;  // of the other limits, K
      for (const Limit& other : limits) {
        const double apart = std::abs(other.temperature - limit.temperature);
        if (apart > 0.0) clear = std::min(clear, apart);
      }
      const std::string words = words_in(solved_, limit);
      const auto found = finder_.isotherms(fine_.values, {limit.temperature});
      const LabelledLine line = labelled(
          drawn(found.front().lines), words, size,
          [&](const Box& box) { return lies_between(box, limit.temperature, 0.7 * clear); }, taken);
      canvas.open("fill=\"none\" stroke=\"#ffffff\" stroke-width=\"4.4\" stroke-linecap=\"round\"");
      for (const Line& piece : line.pieces) canvas.polyline(piece);
      canvas.close();
      canvas.open(stroke_of(limit));
      for (const Line& piece : line.pieces) {
        canvas.polyline(piece);
        for (std::size_t k = 1; k < piece.size(); ++k) taken.take(piece[k - 1], piece[k]);
      }
      canvas.close();
      if (line.labelled) {
        canvas.text(line.at, words,
                    {size, Anchor::middle, line.turn, true, limit_colour, "#ffffff"});
      }
    }
  }

  void draw_coldest(Canvas& canvas, Callouts& callouts, TakenRoom& taken) const {
    for (const solver::AirSurface& air : solved_.surface.airs) {
      if (solved_.variant.spaces[air.air].is != cases::SpaceKind::inside) continue;
      const Point at = view_(air.coldest.place);
      draw_coldest_mark(canvas, at);
      taken.take(Box{at, 12.0, 12.0, 0.0});
      callouts.add(at, towards(air.air, at),
                   fmt::format("coldest {:.1f} °C", air.coldest.temperature.value));
    }
  }

 private:
  [[nodiscard]] std::vector<Line> drawn(const std::vector<geometry::Outline>& all) const {
    std::vector<Line> lines;
    for (const geometry::Outline& outline : all) {
      Line line = simplified(view_(outline), tolerance);
      if (line.size() > 1) lines.push_back(std::move(line));
    }
    return lines;
  }

  /// Whether a box lies in the material, where the field is no further than `most` from a level.
  [[nodiscard]] bool lies_between(const Box& box, double level, double most) const {
    const geometry::Mesh& mesh = solved_.surface.field.mesh;
    const double angle = box.turn * 3.141592653589793 / 180.0;
    for (const double u : {-0.5, 0.0, 0.5}) {
      for (const double v : {-0.5, 0.5}) {
        const double dx = u * box.width, dy = v * box.height;
        const Point place =
            view_.place_of({box.centre.x + dx * std::cos(angle) + dy * std::sin(angle),
                            box.centre.y - dx * std::sin(angle) + dy * std::cos(angle)});
        const auto column = strip(mesh.x, place.x), row = strip(mesh.y, place.y);
        if (!column || !row) return false;
        if (!std::holds_alternative<RegionId>(mesh.cell(*column, *row).below)) return false;
        const double here =
            solver::temperature_at(solved_.surface.field, solved_.surface.temperature, place);
        if (std::abs(here - level) > most) return false;
      }
    }
    return true;
  }

  static std::optional<std::size_t> strip(const std::vector<double>& lines, double at) {
    if (at <= lines.front() || at >= lines.back()) return std::nullopt;
    return static_cast<std::size_t>(std::upper_bound(lines.begin(), lines.end(), at) -
                                    lines.begin()) -
           1;
  }

  /// The way from a place on a surface into its air.
  [[nodiscard]] Point towards(SpaceId air, Point at) const {
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

  const SolvedVariant& solved_;
  const View& view_;
  Bands bands_;
  FineField fine_;
  IsothermFinder finder_;
  std::vector<Isotherm> isotherms_;
};

/// The colours of the bands with the temperatures between them, upright.
void draw_colour_bar(Canvas& canvas, const Bands& bands, Point at, double height) {
  const auto up = [&](double temperature) {
    return at.y + height * (1.0 - (temperature - bands.low) / (bands.high - bands.low));
  };
  constexpr double width = 16.0;
  const Lettering lettering{12.0, Anchor::start, 0.0, false, "#1c1c1c", ""};
  for (std::size_t k = 0; k <= bands.levels.size(); ++k) {
    const double from = k == 0 ? bands.low : bands.levels[k - 1];
    const double to = k == bands.levels.size() ? bands.high : bands.levels[k];
    canvas.rectangle({at.x, up(to)}, width, up(from) - up(to),
                     fmt::format("fill=\"{}\"", hex(bands.colour(k))));
  }
  canvas.rectangle({at.x, at.y}, width, height,
                   "fill=\"none\" stroke=\"#1c1c1c\" stroke-width=\"0.8\"");
  for (const double level : bands.levels) {
    canvas.line({at.x + width, up(level)}, {at.x + width + 4.0, up(level)},
                "stroke=\"#1c1c1c\" stroke-width=\"0.8\"");
    canvas.text({at.x + width + 8.0, up(level) + 4.2},
                fmt::format("{:g}", std::round(level * 1000.0) / 1000.0), lettering);
  }
  canvas.text({at.x, at.y - 8.0}, "°C", lettering);
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
  const Lettering lettering{12.0, Anchor::start, 0.0, false, "#1c1c1c", ""};
  const auto entry = [&](std::string_view words) {
    canvas.text({at.x + 46.0, at.y + 4.2},
                fitted(words, lettering.size, page_width - 2 * page_edge - 46.0), lettering);
    at.y += 19.0;
  };
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

std::string field_picture(const SolvedVariant& solved, std::string_view title,
                          std::string_view note) {
  Canvas canvas;
  const double top =
      draw_heading(canvas, title, fmt::format("Temperature, {}", solved.variant.name));
  constexpr double bar_room = 62.0;
  const View view(solved.surface.field.mesh.section, {page_edge, top},
                  page_width - 2 * page_edge - bar_room, 520.0);

  TakenRoom taken;
  FieldDrawing drawing(solved, view);
  draw_spaces(canvas, view, solved.variant, true, taken);
  drawing.draw_bands(canvas);
  draw_edges(canvas, view, solved.variant.regions.size(),
             "fill=\"none\" stroke=\"#1c1c1c\" stroke-width=\"0.9\"");
  draw_cuts(canvas, view);

  // What is drawn on top takes its room first.
  Canvas marks, limits;
  Callouts callouts(view, solved.variant, taken);
  drawing.draw_coldest(marks, callouts, taken);
  draw_probes(marks, view, solved.variant, probe_words(solved), callouts, taken);
  drawing.draw_limits(limits, taken);
  drawing.draw_isotherms(canvas, taken);
  canvas.append(limits);
  callouts.draw(canvas);
  canvas.append(marks);

  const double bar = std::min(view.height() - 40.0, 360.0);
  draw_colour_bar(canvas, drawing.bands(),
                  {view.corner().x + view.width() + 14.0, view.corner().y + 30.0}, bar);
  double bottom = view.corner().y + std::max(view.height(), bar + 40.0) + 20.0;
  bottom = draw_key(canvas, solved, bottom);
  draw_scale_bar(canvas, view, {page_edge, bottom});
  bottom = draw_note(canvas, note, bottom + 24.0);
  return canvas.picture(bottom, fmt::format("{}: temperature, {}", title, solved.variant.name),
                        fmt::format("{} {}", description_of(solved.variant), solved.summary));
}

}  // namespace quoin::tools
