// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/section/section.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <utility>

#include "cases/model/membranes.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/draw/canvas/hatch.hpp"
#include "tools/draw/section/dimensions.hpp"
#include "tools/draw/section/sheet.hpp"

namespace quoin::tools {
namespace {

using geometry::Fill;
using geometry::RegionId;

/// The chains of all four sides and the room they need, in units.
struct Dimensioning {
  std::vector<std::pair<Side, Chain>> chains;  ///< those of one side from the inside out

  /// What the chains of a side take beyond the margin, units.
  [[nodiscard]] double room(const View& view, Side side) const {
    double room = 0.0;
    for (const auto& [at, chain] : chains) {
      if (at == side) room += chain_room(view, side, chain);
    }
    return room > 0.0 ? room + first_distance : 0.0;
  }

  void draw(Canvas& canvas, const View& view) const {
    Canvas figures;
    for (const Side side : {Side::below, Side::left, Side::above, Side::right}) {
      double distance = margin_at(view, side) + first_distance;
      for (const auto& [at, chain] : chains) {
        if (at != side) continue;
        draw_chain(canvas, figures, view, side, chain, distance);
        distance += chain_room(view, side, chain);
      }
    }
    canvas.append(figures);
  }

  static constexpr double first_distance = 12.0;  ///< from the margin to the first line
};

/// Without the ends of the material where the section is broken off: no dimension ends there.
Chain without_breaks(Chain chain, const Broken& broken, const Extent& material, bool flat) {
  const auto drop = [&](bool is_broken, double place) {
    if (is_broken) std::erase(chain, place);
  };
  drop(flat ? broken.left : broken.below, flat ? material.low.x : material.low.y);
  drop(flat ? broken.right : broken.above, flat ? material.high.x : material.high.y);
  return chain;
}

Dimensioning dimensioning_of(const Shown& shown) {
  const geometry::Section& section = shown.section;
  const Broken& broken = shown.broken;
  const Extent material = material_extent(section);
  Dimensioning all;
  for (const auto& [side, opposite] :
       {std::pair{Side::above, Side::below}, {Side::right, Side::left}}) {
    constexpr std::size_t most = 10;  // beyond that a chain is a tangle
    const bool flat = side == Side::above;
    const auto whole = [&](Chain chain) {
      return without_breaks(std::move(chain), broken, material, flat);
    };
    const bool near_broken = flat ? broken.above : broken.right;
    const bool far_broken = flat ? broken.below : broken.left;
    const Chain layers = near_broken ? Chain{} : whole(layers_along(section, material, side));
    const Chain lower = far_broken ? Chain{} : whole(layers_along(section, material, opposite));
    const Chain corners = whole(corners_along(section, side));
    const auto add = [&](Side at, const Chain& chain, const Chain& known) {
      const bool is_new = !std::includes(known.begin(), known.end(), chain.begin(), chain.end());
      const std::size_t least = broken.any() ? 1 : 2;
      if (chain.size() > least && chain.size() <= most && is_new) all.chains.push_back({at, chain});
    };
    const Chain ends_known = corners.size() <= most ? corners : Chain{};
    add(side, layers, ends_known);
    add(opposite, lower, layers.empty() ? ends_known : layers);
    add(opposite, corners, {});
    const bool ends = flat ? !broken.left && !broken.right : !broken.below && !broken.above;
    if (ends) all.chains.push_back({opposite, {corners.front(), corners.back()}});
  }
  return all;
}

std::vector<RegionId> shown_regions(const View& view, const cases::Variant& variant) {
  std::vector<RegionId> shown;
  for (const RegionId id : geometry::ids(variant.regions)) {
    const auto& cells = view.section().cells;
    if (std::any_of(cells.begin(), cells.end(), [&](const geometry::Cell& cell) {
          return cell.below == Fill{id} || cell.above == Fill{id};
        })) {
      shown.push_back(id);
    }
  }
  return shown;
}

class Legend {
 public:
  Legend(const View& view, const cases::Variant& variant,
         const Per<RegionId, materials::Conductivity>& conductivity)
      : variant_(variant), conductivity_(conductivity) {
    // One material in two uses, such as frame and fabric, is told once.
    for (const RegionId id : shown_regions(view, variant)) {
      const auto told = [&](RegionId other) {
        return variant.regions[other].name == variant.regions[id].name &&
               detail(other) == detail(id);
      };
      if (std::none_of(shown_.begin(), shown_.end(), told)) shown_.push_back(id);
    }
    marks_.push_back({Mark::Kind::cut, "cut plane", "no heat crosses it"});
    if (view.broken().any())
      marks_.push_back({Mark::Kind::broken, "broken off", "the section goes on"});
    for (const cases::Membrane& membrane : variant.membranes) {
      const Mark mark{Mark::Kind::membrane, cases::display_name(membrane),
                      std::isinf(membrane.coat.sd)
                          ? "membrane, nothing passes"
                          : fmt::format("membrane, sd {:g} m", membrane.coat.sd)};
      const bool told = std::any_of(marks_.begin(), marks_.end(), [&](const Mark& other) {
        return other.name == mark.name && other.detail == mark.detail;
      });
      if (!told) marks_.push_back(mark);
    }
  }

  /// Draws it in columns from `at` on, `width` units wide in all. Returns where it ends.
  double draw(Canvas& canvas, const Looks& looks, Point at, double width,
              std::size_t columns) const {
    const double each = width / static_cast<double>(columns);
    double top = at.y, foot = at.y;
    for (std::size_t k = 0; k < shown_.size() + marks_.size(); ++k) {
      const std::size_t column = k % columns;
      if (column == 0) top = foot;
      const Point corner{at.x + each * static_cast<double>(column), top};
      const bool is_mark = k >= shown_.size();
      if (is_mark) {
        draw_mark(canvas, marks_[k - shown_.size()].kind, corner);
      } else {
        draw_swatch(canvas, looks, shown_[k], corner);
      }
      const double end =
          is_mark ? draw_words(canvas, corner, each - 8.0, marks_[k - shown_.size()].name,
                               marks_[k - shown_.size()].detail)
                  : draw_words(canvas, corner, each - 8.0, variant_.regions[shown_[k]].name,
                               detail(shown_[k]));
      foot = std::max(foot, end);
    }
    return foot;
  }

 private:
  /// A line of the drawing and what it means.
  struct Mark {
    enum class Kind { cut, broken, membrane } kind;
    std::string name;
    std::string detail;
  };

  void draw_swatch(Canvas& canvas, const Looks& looks, RegionId id, Point corner) const {
    const Line swatch{corner,
                      {corner.x + 34.0, corner.y},
                      {corner.x + 34.0, corner.y + 24.0},
                      {corner.x, corner.y + 24.0}};
    looks.paint(canvas, id, {swatch});
    canvas.area({swatch}, {{}, {black, 1.0}});
  }

  static void draw_mark(Canvas& canvas, Mark::Kind kind, Point corner) {
    const Point from{corner.x, corner.y + 9.0}, to{corner.x + 34.0, corner.y + 9.0};
    switch (kind) {
      case Mark::Kind::cut:
        canvas.line(from, to, cut_stroke);
        break;
      case Mark::Kind::broken:
        draw_break(canvas, {from.x + 6.0, from.y}, {to.x - 6.0, to.y});
        break;
      case Mark::Kind::membrane:
        canvas.line(from, to, membrane_stroke);
        break;
    }
  }

  /// What an entry is, and smaller below what else is known of it. Returns where it ends.
  static double draw_words(Canvas& canvas, Point corner, double width, std::string_view name,
                           std::string_view detail) {
    constexpr double indent = 42.0;
    double y = corner.y - 3.0;
    const auto write = [&](std::string_view words, const Lettering& lettering) {
      for (const std::string& line : wrapped(words, lettering.size, width - indent, 3))
        canvas.text({corner.x + indent, y += 14.0}, line, lettering);
    };
    write(name, {});
    write(detail, {11.5, Anchor::start, 0.0, false, grey, {}});
    return y + 9.0;
  }

  [[nodiscard]] std::string detail(RegionId id) const {
    const cases::Region& region = variant_.regions[id];
    const std::string state = region.material.cavity ? "air cavity" : moisture_words(region);
    const std::string value = id.index < conductivity_.size()
                                  ? fmt::format("{:.3g} W/(m·K)", conductivity_[id].value)
                                  : "";
    return fmt::format("{}{}{}", state, value.empty() ? "" : ", ", value);
  }

  const cases::Variant& variant_;
  const Per<RegionId, materials::Conductivity>& conductivity_;
  std::vector<RegionId> shown_;
  std::vector<Mark> marks_;
};

constexpr double legend_width = 186.0;  ///< beside an upright drawing, units

bool has_legend_beside(const Shown& shown) {
  const Extent material = material_extent(shown.section);
  return material.width() < 0.6 * material.height();
}

/// The section with room for its dimensions, below `top`, no larger than `scale`.
View view_of(const Shown& shown, const Dimensioning& dimensions, double top, double scale) {
  const double beyond = 2 * page_edge + (has_legend_beside(shown) ? legend_width + 12.0 : 0.0);
  const auto view_with = [&](double left, double right, double above) {
    return View(shown, {page_edge + left, top + above}, page_width - left - right - beyond, 480.0,
                scale);
  };
  // How much room the dimensions need depends on the scale, and the scale on the room: twice will
  // do.
  const View rough = view_with(50.0, 50.0, 50.0);
  return view_with(dimensions.room(rough, Side::left), dimensions.room(rough, Side::right),
                   dimensions.room(rough, Side::above));
}

}  // namespace

double section_scale(const Results& results) {
  double scale = any_scale;
  for (const SolvedVariant& solved : results.variants) {
    const Shown shown = shown_part(solved.variant, geometry::section_of(solved.variant.sheet));
    scale = std::min(scale, view_of(shown, dimensioning_of(shown), 0.0, scale).scale());
  }
  return scale;
}

Picture drawn_section(const cases::Variant& variant,
                      const Per<RegionId, materials::Conductivity>& conductivity,
                      std::string_view title, double scale) {
  Canvas canvas;
  const geometry::Section section = geometry::section_of(variant.sheet);
  const Shown shown = shown_part(variant, section);
  const Dimensioning dimensions = dimensioning_of(shown);
  const Looks looks(variant.regions);
  const double top =
      draw_heading(canvas, title,
                   fmt::format("Section, {}, dimensions in mm",
                               variant.cut == cases::Cut::horizontal ? "plan" : "vertical cut"));
  const View view = view_of(shown, dimensions, top, scale);

  TakenRoom taken;
  const std::vector<geometry::SpaceId> unnamed = draw_spaces(canvas, view, variant, false, taken);
  for (const RegionId id : geometry::ids(variant.regions)) {
    const auto shape =
        view(outlines(view.section(), [&](const Fill& fill) { return fill == Fill{id}; }));
    if (!shape.empty()) looks.paint(canvas, id, shape);
  }
  draw_edges(canvas, view, variant.regions.size(), {black, 1.2});
  draw_membranes(canvas, view);
  draw_cuts(canvas, view);
  dimensions.draw(canvas, view);
  Callouts callouts(view, variant, taken);
  draw_probes(canvas, view, variant, {}, callouts, taken);
  call_out_spaces(callouts, view, variant, unnamed);
  callouts.draw(canvas);

  const Legend legend(view, variant, conductivity);
  double bottom = view.corner().y + view.height() + dimensions.room(view, Side::below) + 14.0;
  if (has_legend_beside(shown)) {
    const Point at{view.corner().x + view.width() + dimensions.room(view, Side::right) + 20.0,
                   view.corner().y + 4.0};
    bottom =
        std::max(bottom, legend.draw(canvas, looks, at, page_width - page_edge - at.x, 1) + 12.0);
  } else {
    bottom = 8.0 + legend.draw(canvas, looks, {page_edge, bottom}, page_width - 2 * page_edge, 2);
  }
  draw_scale_bar(canvas, view, {view.corner().x + view.margins().left, bottom});
  bottom =
      draw_whole(canvas, variant, section, {page_edge, bottom + 24.0}, page_width - 2 * page_edge);
  return {std::move(canvas), bottom, fmt::format("{}: section", title), description_of(variant)};
}

}  // namespace quoin::tools
