// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/recipe_reader.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <optional>
#include <utility>

#include "cases/grammar/units.hpp"
#include "cases/meaning/spaces.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

/// `[common brick, 330, damp]` is short for a map.
Node layer_map(const Node& list) {
  constexpr std::string_view keys[] = {"material", "thickness", "moisture"};
  Node map;
  map.kind = Node::Kind::map;
  map.mark = list.mark;
  for (std::size_t i = 0; i < list.items.size() && i < std::size(keys); ++i)
    map.entries.push_back({std::string(keys[i]), list.items[i].mark, list.items[i]});
  return map;
}

bool begins_with_a_digit(std::string_view text) {
  return !text.empty() && text.front() >= '0' && text.front() <= '9';
}

/// What is said of a layer that is written in a way of its own, which tells what is meant:
/// `[330, wall brick]`, `wall brick: 330`, `{wall brick, 330}`; nothing of any other.
std::optional<Complaint> other_form(const Node& node) {
  std::string_view name, thickness;
  if (node.kind == Node::Kind::sequence && node.items.size() == 2) {
    thickness = node.items[0].text;
    name = node.items[1].text;
  } else if (node.kind == Node::Kind::map && node.entries.size() == 1) {
    name = node.entries[0].key;
    thickness = node.entries[0].value.text;
  } else if (node.kind == Node::Kind::map && node.entries.size() == 2 &&
             node.entries[0].value.kind == Node::Kind::nothing &&
             node.entries[1].value.kind == Node::Kind::nothing) {
    name = node.entries[0].key;
    thickness = node.entries[1].key;
  }
  if (!begins_with_a_digit(thickness) || name.empty() || begins_with_a_digit(name) ||
      name == "thickness") {
    return std::nullopt;
  }
  return Complaint{"this is not how a layer is written", fmt::format("{}, {}", name, thickness),
                   "{material: name, thickness: 330}, or [name, 330]",
                   fmt::format("write {{material: {}, thickness: {}}}", name, thickness)};
}

std::string_view name_of(SpaceKind kind) {
  return kind == SpaceKind::inside ? "inside" : kind == SpaceKind::outside ? "outside" : "unheated";
}

}  // namespace

RecipeReader::RecipeReader(const Node& map, std::string what, FaultList& faults, Palette& palette,
                           const Per<SpaceId, Space>& spaces)
    : Reader(map, std::move(what), faults), palette_(palette), spaces_(spaces) {}

void RecipeReader::membrane(const Node& node, std::vector<geometry::Layer>& list) {
  WrittenMembrane written;
  read(node, "a membrane", faults_, written);
  if (list.empty()) {
    faults_.add(node.mark,
                {"a membrane lies between two layers, and there is none before it", "",
                 "a layer first", "on a surface it is a coat: write `coat` at the space"});
  } else if (list.back().behind.valid()) {
    faults_.add(node.mark, {"two membranes lie on one another", "", "one membrane between layers",
                            "give one with the sum of their sd"});
  } else if (written.coat) {
    list.back().behind = palette_.membrane(written);
  }
}

void RecipeReader::layer(const Node& node, std::vector<geometry::Layer>& list) {
  if (node.kind == Node::Kind::map && node.find(WrittenMembrane::key) != nullptr) {
    membrane(node, list);
    return;
  }
  if (const auto complaint = other_form(node)) {
    faults_.add(node.mark, *complaint);
    return;
  }
  const bool brief =
      node.kind == Node::Kind::sequence && node.items.size() >= 2 && node.items.size() <= 3;
  const Node map = brief ? layer_map(node) : node;
  WrittenLayer written;
  const std::size_t faults_before = faults_.met();
  read(map, "a layer", faults_, written);
  if (written.material.empty()) return;
  const PlacedName name{written.material, map.find("material")->value.mark};
  const auto region = palette_.region(name, written.moisture, std::nullopt);
  refuse_cavity(name);
  if (!region) return;
  const auto& air = palette_.regions()[*region].material.air_layer;
  if (air && std::abs(air->thickness - written.thickness) > geometry::snap) {
    faults_.add(map.find("thickness")->value.mark,
                {fmt::format("the air layer '{}' is not that thick", written.material),
                 shown(written.thickness, Measure::length), shown(air->thickness, Measure::length),
                 "what it resists goes with its thickness: define one of each thickness"});
  }
  if (faults_.met() == faults_before) list.push_back({*region, written.thickness, air.has_value()});
}

void RecipeReader::layers(std::string_view key, std::vector<geometry::Layer>& list,
                          std::string_view about, std::string_view /*example*/) {
  optional_layers(key, list, about);
  const Entry* entry = map_.find(key);
  if (entry == nullptr) {
    missing(key, "[{material: name, thickness: 330}, ...] from the inside out");
  } else if (entry->value.kind == Node::Kind::sequence && entry->value.items.empty()) {
    faults_.add(entry->value.mark, {"there is no layer", "", "at least one layer", ""});
  }
}

void RecipeReader::optional_layers(std::string_view key, std::vector<geometry::Layer>& list,
                                   std::string_view /*about*/, std::string_view /*example*/) {
  const Node* node = value_of(key);
  if (node == nullptr || node->kind == Node::Kind::nothing) return;
  if (node->kind != Node::Kind::sequence) {
    faults_.add(node->mark, {fmt::format("'{}' is a list of layers", key), words_of(*node),
                             "[{material: name, thickness: 330}, ...]",
                             node->kind == Node::Kind::map ? "put the layer in brackets" : ""});
    return;
  }
  for (const Node& item : node->items) layer(item, list);
}

void RecipeReader::frame(std::string_view key, RegionId& region, std::string_view about) {
  part(key, region, materials::Part::frame, about);
}

void RecipeReader::material(std::string_view key, RegionId& region, std::string_view /*example*/,
                            std::string_view about) {
  part(key, region, materials::Part::fabric, about);
}

void RecipeReader::ground(std::string_view key, RegionId& region, std::string_view /*example*/,
                          std::string_view about) {
  part(key, region, materials::Part::ground, about);
}

void RecipeReader::optional_material(std::string_view key, RegionId& region,
                                     std::string_view example, std::string_view about) {
  const Node* node = value_of(key);
  if (node == nullptr || node->kind == Node::Kind::nothing) return;
  material(key, region, example, about);
}

void RecipeReader::optional_membrane(std::string_view key, MembraneId& membrane,
                                     std::string_view /*example*/, std::string_view about) {
  std::optional<materials::Coat> written;
  coat(key, written, about);
  if (written) membrane = palette_.membrane({*written, ""});
}

void RecipeReader::part(std::string_view key, RegionId& region, materials::Part part,
                        std::string_view about) {
  std::string name;
  word(key, name, about);
  if (name.empty()) return;
  const Mark mark = map_.find(key)->value.mark;
  if (const auto found = palette_.region({name, mark}, std::nullopt, part)) region = *found;
  refuse_cavity({name, mark});
}

void RecipeReader::refuse_cavity(PlacedName name) {
  if (!palette_.is_cavity(name.name)) return;
  faults_.add(
      name.mark,
      {fmt::format("the air cavity '{}' cannot be a part of a recipe", name.name), name.name,
       "a material", "cavities are painted in a sheet, each as an area of its own"});
}

SpaceId RecipeReader::only_space(std::string_view key, std::string_view kind) {
  std::vector<std::string> names;
  SpaceId only;
  bool all_known = spaces_.size() > 0;
  for (const SpaceId id : geometry::ids(spaces_)) {
    all_known = all_known && spaces_[id].air.valid();
    if (name_of(spaces_[id].is) != kind || spaces_[id].air != id) continue;
    names.push_back(spaces_[id].name);
    only = id;
  }
  if (names.size() == 1) return only;
  if (!all_known) return {};  // it may be a faulty one, of which enough is said
  if (names.empty()) {
    faults_.add(map_.mark,
                {fmt::format("{} needs a space that is {}", what_, kind), "",
                 fmt::format("name: {{is: {}, temperature: ...}} in `spaces`", kind), ""});
  } else {
    faults_.add(
        map_.mark,
        {fmt::format("several spaces are {}: {} must say which it means", kind, what_),
         joined(names, ", "),
         fmt::format("one of: {}: {}", key, joined(names, fmt::format(", {}: ", key))), ""});
  }
  return {};
}

void RecipeReader::space(std::string_view key, SpaceId& space, std::string_view kind,
                         std::string_view about) {
  std::string name;
  text(key, name, about);
  if (map_.find(key) == nullptr) {
    space = only_space(key, kind);
  } else if (!name.empty()) {
    space = find_space(spaces_, name);
    if (!space.valid()) {
      faults_.add(map_.find(key)->value.mark, {fmt::format("unknown space '{}'", name), name,
                                               "one of: " + joined(names_of(spaces_), ", "),
                                               did_you_mean(name, names_of(spaces_))});
    }
  }
  refuse_same_air(space);
}

void RecipeReader::optional_space(std::string_view key, SpaceId& space, std::string_view example,
                                  std::string_view about) {
  const Node* node = value_of(key);
  if (node == nullptr || node->kind == Node::Kind::nothing) return;
  this->space(key, space, example, about);
}

void RecipeReader::refuse_same_air(SpaceId space) {
  if (!space.valid()) return;
  const SpaceId air = spaces_[space].air;
  if (!air.valid()) return;  // a faulty one, of which enough is said
  if (std::find(airs_.begin(), airs_.end(), air) != airs_.end()) {
    faults_.add(map_.mark, {fmt::format("the air on both sides of {} is the same", what_),
                            spaces_[space].name, "two different airs", ""});
  }
  airs_.push_back(air);
}

}  // namespace quoin::cases
