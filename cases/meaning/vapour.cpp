// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/vapour.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <string>

#include "cases/model/painted.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

/// The place of a key's value within a group, or of the group.
Mark mark_in(const Entry& group, std::string_view key) {
  if (group.value.kind == Node::Kind::scalar) return group.value.mark;
  const Entry* entry = group.value.find(key);
  return entry == nullptr ? group.mark : entry->value.mark;
}

Conditions conditions_of(const std::optional<Conditions>& written, const Entry& group,
                         const Variant& variant, FaultList& faults) {
  if (written == Conditions::by_month && !variant.climate) {
    faults.add(mark_in(group, "conditions"),
               {"there is no climate whose months could be taken", "by month",
                "climate: with twelve months", "write conditions: as stated"});
  }
  return written.value_or(variant.climate ? Conditions::by_month : Conditions::as_stated);
}

/// Every air that the section meets must have a humidity.
void check_humidities(const Entry& group, const Document& document, const Variant& variant,
                      FaultList& faults) {
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const Space& space = variant.spaces[id];
    if (space.humidity || space.air != id || id.index >= document.spaces.size()) continue;
    bool meets = false;
    for (const SpaceId other : geometry::ids(variant.spaces))
      meets = meets || (variant.spaces[other].air == id && is_painted(variant, other));
    if (!meets) continue;
    faults.add(document.spaces[id.index].mark,
               {fmt::format("'{}' needs the humidity of '{}'", group.key, space.name),
                "no humidity", "humidity: 85", fmt::format("or remove `{}`", group.key)});
  }
}

/// Every material of the section must have a vapour resistance; air in a hollow has that of air.
void check_resistances(const Entry& group, const Document& document, const Variant& variant,
                       FaultList& faults) {
  std::vector<std::string> said;
  for (const RegionId id : geometry::ids(variant.regions)) {
    const Region& region = variant.regions[id];
    const materials::Material& material = region.material;
    if (material.cavity || material.vapour_resistance_dry || material.vapour_resistance_wet ||
        !is_painted(variant, id) || std::find(said.begin(), said.end(), region.name) != said.end())
      continue;
    said.push_back(region.name);
    const auto own =
        std::find_if(document.materials.begin(), document.materials.end(),
                     [&](const Named<WrittenMaterial>& one) { return one.name == region.name; });
    faults.add(own == document.materials.end() ? group.mark : own->mark,
               {fmt::format("'{}' needs the vapour resistance of '{}'", group.key, region.name), "",
                "vapour resistance: {dry: 10, wet: 6}", ""});
  }
}

void check_wet(const Entry& group, const Palette& palette, const Variant& variant,
               FaultList& faults) {
  const std::string& wet = variant.drying->wet;
  if (wet.empty()) return;
  const Mark mark = mark_in(group, "wet");
  if (!palette.knows(wet)) {
    faults.add(mark,
               {fmt::format("unknown material '{}'", wet), wet,
                "a name from `materials` or the catalogue", did_you_mean(wet, palette.names())});
    return;
  }
  if (palette.is_cavity(wet)) {
    faults.add(mark, {fmt::format("the air cavity '{}' holds no water", wet), "",
                      "a material that does", ""});
    return;
  }
  for (const RegionId id : geometry::ids(variant.regions)) {
    if (variant.regions[id].name == wet && is_painted(variant, id)) return;
  }
  faults.add(mark,
             {fmt::format("the section shows no '{}'", wet), "", "a material that it shows", ""});
}

void check_coats(const Entry& group, const Variant& variant, FaultList& faults) {
  for (const auto& [key, coats] : {std::pair("coats", &variant.drying->coats),
                                   std::pair("inside coats", &variant.drying->inside_coats)}) {
    for (std::size_t k = 0; k < coats->size(); ++k) {
      const auto end = coats->begin() + static_cast<std::ptrdiff_t>(k);
      const auto first =
          std::find_if(coats->begin(), end, [&](const auto& one) { return one.name == end->name; });
      if (first == end) continue;
      faults.add(mark_in(group, key), {fmt::format("the coat '{}' is named twice", end->name), "",
                                       "each coat once", "remove one of the two"});
    }
  }
}

}  // namespace

void ask_about_vapour(const Node& tree, const Document& document, const Palette& palette,
                      Variant& variant, FaultList& faults) {
  const Entry* vapour = tree.find("vapour");
  if (vapour != nullptr && document.vapour) {
    const Conditions conditions =
        conditions_of(document.vapour->conditions, *vapour, variant, faults);
    variant.vapour = {conditions, document.vapour->days};
    if (document.vapour->days && conditions == Conditions::by_month) {
      faults.add(mark_in(*vapour, "days"),
                 {"months have their own days", "", "`days` for stated conditions only",
                  "remove `days`, or write conditions: as stated"});
    }
  }
  const Entry* drying = tree.find("drying");
  if (drying != nullptr && document.drying) {
    variant.drying = {conditions_of(document.drying->conditions, *drying, variant, faults),
                      document.drying->wet, document.drying->coats, document.drying->inside_coats};
    if (variant.drying->coats.empty() && drying->value.kind == Node::Kind::map &&
        drying->value.find("coats") == nullptr && !has_mistyped(drying->value, "coats")) {
      faults.add(drying->mark, {"'coats' is missing in 'drying'", "",
                                "coats: [limewash, plastic masonry paint]", ""});
    }
    check_wet(*drying, palette, variant, faults);
    check_coats(*drying, variant, faults);
  }
  const Entry* asks = variant.vapour ? vapour : variant.drying ? drying : nullptr;
  if (asks == nullptr) return;
  check_humidities(*asks, document, variant, faults);
  check_resistances(*asks, document, variant, faults);
}

}  // namespace quoin::cases
