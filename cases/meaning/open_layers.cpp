// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/open_layers.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <utility>
#include <variant>

#include "cases/meaning/spaces.hpp"
#include "cases/model/fixed_resistance.hpp"
#include "geometry/flaws.hpp"
#include "geometry/section.hpp"
#include "materials/conductivity.hpp"

namespace quoin::cases {
namespace {

using geometry::Flank;
using geometry::Layer;
using materials::AirLayer;
using materials::Ventilation;

/// Thinner than any layer of air that stands for one, m2K/W.
constexpr double least_resistance = 0.01;

auto layer_in(const std::vector<Layer>& layers, RegionId region) {
  return std::find_if(layers.begin(), layers.end(),
                      [&](const Layer& layer) { return layer.region == region; });
}

/// The first plane part with a layer; null where there is none.
const Flank* flank_with(const Variant& variant, RegionId region) {
  const auto found = std::find_if(
      variant.flanks.begin(), variant.flanks.end(),
      [&](const Flank& flank) { return layer_in(flank.layers, region) != flank.layers.end(); });
  return found == variant.flanks.end() ? nullptr : &*found;
}

/// The air a layer is open to: that outside its wall, else the only one outside.
SpaceId air_outside(const Variant& variant, RegionId region) {
  if (const Flank* flank = flank_with(variant, region)) {
    if (variant.spaces[flank->outside].is == SpaceKind::outside) return flank->outside;
  }
  SpaceId only;
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const Space& space = variant.spaces[id];
    if (space.is != SpaceKind::outside || space.air != id) continue;
    if (only.valid()) return {};
    only = id;
  }
  return only;
}

Space space_in(const Variant& variant, RegionId region, SpaceId outside) {
  const Space& open = variant.spaces[outside];
  const Region& layer = variant.regions[region];
  Space space;
  space.name = fmt::format("{} in {}", open.name, layer.name);
  space.is = open.is;
  space.temperature = open.temperature;
  space.humidity = open.humidity;
  space.wind = open.wind;
  space.resistance = materials::well_ventilated_face_resistance(*layer.material.air_layer);
  space.in_layer = region;
  space.air = open.air;
  return space;
}

SpaceId space_of(Variant& variant, RegionId region, SpaceId outside) {
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    if (variant.spaces[id].in_layer == region) return id;
  }
  return variant.spaces.add(space_in(variant, region, outside));
}

/// Paints a layer as a space and ends plane parts there.
void open_well(Variant& variant, RegionId region, SpaceId outside) {
  const SpaceId space = space_of(variant, region, outside);
  for (geometry::Sheet* sheet : {&variant.sheet, &variant.floor_alone}) {
    for (geometry::Patch& patch : *sheet) {
      if (patch.fill == geometry::Fill(region)) patch.fill = space;
    }
  }
  for (Flank& flank : variant.flanks) {
    const auto found = layer_in(flank.layers, region);
    if (found == flank.layers.end()) continue;
    flank.layers.erase(found, flank.layers.end());
    flank.outside = space;
  }
}

/// Of all that lies outside a layer of a plane part, with the surface there, m2K/W.
double resistance_outside(const Variant& variant, const Flank& flank, RegionId region) {
  double sum = fixed_resistance(variant.spaces[flank.outside]);
  for (auto layer = layer_in(flank.layers, region) + 1; layer != flank.layers.end(); ++layer) {
    const Region& of = variant.regions[layer->region];
    sum += layer->thickness / materials::conductivity_of(of.material, of.moisture).value;
  }
  return sum;
}

std::optional<std::string> open_slightly(Variant& variant, RegionId id) {
  Region& region = variant.regions[id];
  const Flank* flank = flank_with(variant, id);
  if (flank == nullptr) {
    return fmt::format(
        "the air layer '{}' is slightly ventilated: what it resists depends on the layers outside "
        "of it, which only a recipe knows; on a sheet give its `layer resistance`",
        region.name);
  }
  AirLayer layer = *region.material.air_layer;
  layer.resistance =
      materials::slightly_ventilated_resistance(layer, resistance_outside(variant, *flank, id));
  if (*layer.resistance < least_resistance) {
    return fmt::format(
        "the air layer '{}' is slightly ventilated, but most of the wall's resistance lies outside "
        "of it, where it is lost in part: no layer of air can stand for that; take it as well "
        "ventilated, `openings: 1500`",
        region.name);
  }
  const std::string name = region.material.name;
  region.material = materials::air_of(layer);
  region.material.name = name;
  return std::nullopt;
}

/// The layers of air that a section may show and that are ventilated so much.
std::vector<RegionId> layers_of(const Variant& variant, Ventilation ventilation) {
  std::vector<RegionId> found;
  for (const RegionId id : geometry::ids(variant.regions)) {
    const auto& layer = variant.regions[id].material.air_layer;
    if (layer && materials::ventilation_of(*layer) == ventilation) found.push_back(id);
  }
  return found;
}

/// Why a well ventilated layer cannot be where a plane part has it; nothing where it can.
std::optional<std::string> objection_to_place(const Variant& variant, RegionId id) {
  for (const Flank& flank : variant.flanks) {
    const auto found = layer_in(flank.layers, id);
    if (found == flank.layers.end()) continue;
    if (std::any_of(flank.layers.begin(), found, [](const Layer& layer) { return !layer.hollow; }))
      continue;
    return fmt::format(
        "nothing solid lies between '{}' and the air layer '{}', which is open to outdoors: put "
        "the layers inside of it before it, or take it as still air, without `openings`",
        variant.spaces[flank.inside].name, variant.regions[id].name);
  }
  return std::nullopt;
}

/// How far a layer of air that was opened meets spaces that are not outdoors, m, and one of them.
std::pair<double, SpaceId> meeting(const Variant& variant, const geometry::Section& section,
                                   SpaceId layer) {
  const auto space_in = [&](std::size_t i, std::size_t j) {
    const geometry::Cell& cell = section.cell(i, j);
    const auto* space = std::get_if<SpaceId>(&cell.below);
    return space != nullptr && cell.below == cell.above ? *space : SpaceId{};
  };
  std::pair<double, SpaceId> met{0.0, SpaceId{}};
  const auto meet = [&](SpaceId one, SpaceId other, double length) {
    if (one != layer) std::swap(one, other);
    if (one != layer || !other.valid() || variant.spaces[other].is == SpaceKind::outside) return;
    met = {met.first + length, other};
  };
  for (std::size_t j = 0; j < section.rows(); ++j) {
    for (std::size_t i = 0; i < section.columns(); ++i) {
      if (i + 1 < section.columns())
        meet(space_in(i, j), space_in(i + 1, j), section.y[j + 1] - section.y[j]);
      if (j + 1 < section.rows())
        meet(space_in(i, j), space_in(i, j + 1), section.x[i + 1] - section.x[i]);
    }
  }
  return met;
}

/// Why layers that were opened leave no section to compute; nothing where they leave one. A layer
/// that ends in a room at an opening meets it by its thickness, which is remarked on.
std::optional<std::string> objection_to_opened(const Variant& variant) {
  const geometry::Section section = geometry::section_of(variant.sheet);
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const Space& space = variant.spaces[id];
    if (!space.in_layer.valid()) continue;
    const Region& layer = variant.regions[space.in_layer];
    const auto [length, other] = meeting(variant, section, id);
    if (length <= 2.5 * layer.material.air_layer->thickness) continue;
    return fmt::format(
        "the air layer '{}' is open to outdoors and meets '{}' along {:.0f} mm with nothing solid "
        "between: put a layer between the two, or take it as still air, without `openings`",
        layer.name, variant.spaces[other].name, 1e3 * length);
  }
  for (const geometry::Flaw& flaw : geometry::flaws(variant.sheet, section)) {
    if (flaw.kind == geometry::FlawKind::no_material || flaw.kind == geometry::FlawKind::no_space)
      return "nothing solid is left of the section beside air that is open to outdoors";
    if (flaw.kind != geometry::FlawKind::idle_space) continue;
    const Space& idle = variant.spaces[flaw.space];
    if (idle.is == SpaceKind::outside) continue;  // outdoors comes nearer by the open layer
    return fmt::format(
        "with its air layer open to outdoors '{}' touches nothing solid: put a layer between the "
        "two, or take it as still air, without `openings`",
        idle.name);
  }
  return std::nullopt;
}

/// Whether the recipe of a variant leaves the layers of air of its wall open at an opening.
bool lies_open(const Variant& variant) {
  if (!variant.recipe) return false;
  return std::visit(
      [](const auto& recipe) {
        if constexpr (requires { recipe.closer; }) return !recipe.closer.valid();
        return false;
      },
      *variant.recipe);
}

}  // namespace

std::optional<std::string> open_layers(Variant& variant) {
  // First those whose plane walls must still be whole.
  for (const RegionId id : layers_of(variant, Ventilation::slight)) {
    if (auto objection = open_slightly(variant, id)) return objection;
  }
  const std::vector<RegionId> open = layers_of(variant, Ventilation::well);
  for (const RegionId id : open) {
    if (auto objection = objection_to_place(variant, id)) return objection;
  }
  for (const RegionId id : open) {
    const Region& region = variant.regions[id];
    const SpaceId outside = air_outside(variant, id);
    if (!outside.valid()) {
      return fmt::format(
          "the air layer '{}' is open to outdoors, but none or several spaces are "
          "outside: paint it as a space, `like` one of them",
          region.name);
    }
    open_well(variant, id, outside);
  }
  return open.empty() ? std::nullopt : objection_to_opened(variant);
}

std::vector<std::string> remarks_on_open_layers(const Variant& variant) {
  std::vector<std::string> remarks;
  for (const RegionId id : layers_of(variant, Ventilation::slight)) {
    const Region& region = variant.regions[id];
    remarks.push_back(fmt::format(
        "'{}' is slightly ventilated: it has the {:.2f} m²K/W that its plane wall asks for; beside "
        "an opening or a closer that is an estimate",
        region.name, region.material.air_layer->resistance.value_or(0.0)));
  }
  for (const RegionId id : layers_of(variant, Ventilation::well)) {
    remarks.push_back(fmt::format(
        "'{}' is well ventilated: what lies outside of it keeps no heat in; air that gets behind "
        "or through the layers inside of it is not looked at",
        variant.regions[id].name));
    if (lies_open(variant)) {
      remarks.push_back(fmt::format(
          "'{}' is open to outdoors and lies open at the opening, where room and outdoors would "
          "meet: close it with a `closer`",
          variant.regions[id].name));
    }
  }
  return remarks;
}

}  // namespace quoin::cases
