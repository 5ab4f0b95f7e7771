// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/wall_remarks.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <vector>

#include "geometry/lines.hpp"
#include "materials/air_bricks.hpp"
#include "materials/mineral.hpp"

namespace quoin::cases {
namespace {

// Common practice, no source: brick laid flat is 100 mm thick, on edge 65 mm; plaster is thinner
// than 20 mm on each face.
constexpr double thinnest_wall = 0.1;       // m, of all layers
constexpr double thinnest_masonry = 0.065;  // m
constexpr double thickest_plaster = 0.02;   // m
constexpr double thickest_masonry = 1.5;    // m; towers have thicker walls, houses have not
constexpr double noticed_along = 0.2;       // m of wall; what is shorter is a detail

bool is_masonry(const Variant& variant, RegionId id) {
  const Region& region = variant.regions[id];
  return region.part == materials::Part::fabric && materials::is_mineral(region.material);
}

/// A run of fabric between two spaces along a line.
struct Run {
  std::map<RegionId, double> layers;  ///< m of each region
  bool fabric = true;                 ///< no frame, glazing or ground among them
};

/// The masonry of a run that is thin enough to be remarked on; not valid where none is.
RegionId thin_masonry(const Variant& variant, const Run& run) {
  double all = 0.0, mineral = 0.0;
  RegionId thickest;
  for (const auto& [id, length] : run.layers) {
    all += length;
    if (!is_masonry(variant, id)) continue;
    mineral += length;
    if (!thickest.valid() || length > run.layers.at(thickest)) thickest = id;
  }
  const bool thin = run.fabric && thickest.valid() && all < thinnest_wall && mineral > all / 2 &&
                    run.layers.at(thickest) < thinnest_masonry &&
                    run.layers.at(thickest) > thickest_plaster;
  return thin ? thickest : RegionId{};
}

/// Calls `found(from, to, run)` for every run of material that two spaces bound.
template <class Found>
void each_run(const Variant& variant, const geometry::Line& line, Found found) {
  SpaceId from;
  Run run;
  for (const geometry::LinePiece& piece : line.pieces) {
    if (const auto* id = std::get_if<RegionId>(&piece.fill)) {
      run.layers[*id] += piece.length;
      run.fabric = run.fabric && variant.regions[*id].part == materials::Part::fabric;
      continue;
    }
    const auto* to = std::get_if<SpaceId>(&piece.fill);
    if (to != nullptr && from.valid() && !run.layers.empty()) found(from, *to, run);
    from = to == nullptr ? SpaceId{} : *to;
    run = {};
  }
}

bool is_outer_wall(const Space& one, const Space& other) {
  return (one.is == SpaceKind::inside && other.is == SpaceKind::outside) ||
         (one.is == SpaceKind::outside && other.is == SpaceKind::inside);
}

/// "330 or 33 cm" of 33 mm.
std::string in_centimetres(double thickness) {
  return fmt::format("{:.4g} or {:.4g} cm", 1e4 * thickness, 1e3 * thickness);
}

double masonry_of(const Variant& variant, const geometry::Flank& flank) {
  double thickness = 0.0;
  for (const geometry::Layer& layer : flank.layers) {
    if (is_masonry(variant, layer.region)) thickness += layer.thickness;
  }
  return thickness;
}

/// m2 of a section.
double masonry_area(const Variant& variant) {
  double area = 0.0;
  for (const geometry::Line& line : geometry::lines_of(geometry::painted(variant.sheet))) {
    for (const geometry::LinePiece& piece : line.pieces) {
      const auto* id = std::get_if<RegionId>(&piece.fill);
      if (id != nullptr && is_masonry(variant, *id))
        area += piece.length * line.width / 2;  // it lies on a row and on a column
    }
  }
  return area;
}

constexpr double most_lost = 0.5;  // of what was there

bool is_lost(double was, double is) { return was > thinnest_wall && is < most_lost * was; }

/// What an unheated space loses to the air outside, W/(m K); nothing where it is not known.
std::optional<double> vented(const Variant& variant, const std::string& name) {
  for (const Space& space : variant.spaces) {
    if (space.name != name || space.is != SpaceKind::unheated || space.losses.empty()) continue;
    double sum = 0.0;
    for (const Loss& loss : space.losses) {
      if (variant.spaces[loss.to].is == SpaceKind::outside) sum += loss.by_metre;
    }
    return sum;
  }
  return std::nullopt;
}

/// The unheated space that less air passes than in the first variant; null where there is none.
const Space* less_vented(const Variant& first, const Variant& later) {
  constexpr double noticeable = 0.95;
  // 1500 mm2 by metre of wall, which the trade takes to be enough: common practice, no source.
  constexpr double enough = noticeable * materials::loss_through({});
  for (const Space& space : later.spaces) {
    const auto was = vented(first, space.name), is = vented(later, space.name);
    if (was && is && *is < noticeable * *was && *is < enough) return &space;
  }
  return nullptr;
}

/// The masonry of a run that is thick enough to be remarked on; not valid where none is.
RegionId thick_masonry(const Variant& variant, const Run& run) {
  for (const auto& [id, length] : run.layers) {
    if (run.fabric && length > thickest_masonry && is_masonry(variant, id)) return id;
  }
  return {};
}

/// A wall so thin, or so thick, that it was probably mistyped, and its masonry.
struct OddWall {
  RegionId masonry;
  std::string words;
};

/// Walls between inside and outside along which their masonry is odd, by m.
struct OddStretches {
  std::map<RegionId, double> along;
  std::map<RegionId, OddWall> walls;
  double outer = 0.0;  ///< of all walls between inside and outside
};

std::string odd_words(const Variant& variant, SpaceId room, SpaceId beyond, RegionId id,
                      const Run& run, bool thin) {
  double all = 0.0;
  for (const auto& [region, length] : run.layers) all += length;
  const double masonry = run.layers.at(id);
  return fmt::format(
      "the wall between '{}' and '{}' is {:.4g} mm thick, {:.4g} mm of it '{}': {}",
      variant.spaces[room].name, variant.spaces[beyond].name, 1e3 * all, 1e3 * masonry,
      variant.regions[id].name,
      thin ? "if that was measured in centimetres, write " + in_centimetres(masonry)
           : fmt::format("if that is a nought too many, write {:.4g}", 1e2 * masonry));
}

OddStretches odd_stretches(const Variant& variant) {
  OddStretches odd;
  for (const geometry::Line& line : geometry::lines_of(geometry::painted(variant.sheet))) {
    each_run(variant, line, [&](SpaceId from, SpaceId to, const Run& run) {
      if (!is_outer_wall(variant.spaces[from], variant.spaces[to])) return;
      odd.outer += line.width;
      const RegionId thin = thin_masonry(variant, run);
      const RegionId id = thin.valid() ? thin : thick_masonry(variant, run);
      if (!id.valid()) return;
      odd.along[id] += line.width;
      const bool outwards = variant.spaces[from].is == SpaceKind::inside;
      odd.walls.try_emplace(
          id, OddWall{id, odd_words(variant, outwards ? from : to, outwards ? to : from, id, run,
                                    thin.valid())});
    });
  }
  return odd;
}

/// The first such wall that is no mere detail: long, or most of what the section shows.
std::optional<OddWall> odd_wall(const Variant& variant) {
  const OddStretches odd = odd_stretches(variant);
  for (const auto& [id, along] : odd.along) {
    if (along >= std::min(noticed_along, odd.outer / 2)) return odd.walls.at(id);
  }
  return std::nullopt;
}

/// What is said where a variant has lost most of the masonry of the first; empty where it has not.
std::string lost_masonry(const Variant& first, const Variant& later) {
  const auto words = [](const std::string& where, const std::string& is, const std::string& was) {
    return fmt::format(
        "{} has {} of masonry and plaster, where the case as written has {}: a list in a variant "
        "replaces the whole list, so write every layer that stays again",
        where, is, was);
  };
  if (first.recipe && later.recipe && first.recipe->index() == later.recipe->index()) {
    const std::size_t common = std::min(first.flanks.size(), later.flanks.size());
    for (std::size_t f = 0; f < common; ++f) {
      const double was = masonry_of(first, first.flanks[f]);
      const double is = masonry_of(later, later.flanks[f]);
      if (first.flanks[f].name != later.flanks[f].name || !is_lost(was, is)) continue;
      return words("the " + later.flanks[f].name, fmt::format("{:.4g} mm", 1e3 * is),
                   fmt::format("{:.4g} mm", 1e3 * was));
    }
    return "";
  }
  if (first.recipe || later.recipe) return "";
  const double was = masonry_area(first), is = masonry_area(later);
  if (is >= most_lost * was) return "";
  return words("the section", fmt::format("{:.3g} m²", is), fmt::format("{:.3g} m²", was));
}

/// What is said where less air passes a void; empty where that does not bear.
std::string lost_ventilation(const Variant& first, const Variant& later) {
  const Space* space = less_vented(first, later);
  if (space == nullptr) return "";
  return fmt::format(
      "less outside air passes '{}' than in the case as written: where that is the void of a "
      "timber floor, its joists and boards get damp and rot; keep air bricks open and clear, and "
      "warm the floor by insulation between the joists instead",
      space->name);
}

}  // namespace

bool is_less_vented(const Variant& first, const Variant& later) {
  return less_vented(first, later) != nullptr;
}

bool loses_masonry(const Variant& first, const Variant& later) {
  return !lost_masonry(first, later).empty();
}

void remark_on_thickness(const Drawn& drawn, Variant& variant) {
  const std::optional<OddWall> odd = odd_wall(variant);
  if (!odd) return;
  std::size_t line = drawn.mark.line;
  for (std::size_t i = 0; i < std::min(drawn.marks.size(), variant.sheet.size()); ++i) {
    if (variant.sheet[i].fill == geometry::Fill(odd->masonry)) line = drawn.marks[i].line;
  }
  variant.remarks.push_back({odd->words, line});
}

void remark_on_losses(const Variant& first, Mark mark, Variant& later) {
  for (std::string text : {lost_masonry(first, later), lost_ventilation(first, later)}) {
    if (!text.empty()) later.remarks.push_back({std::move(text), mark.line});
  }
}

}  // namespace quoin::cases
