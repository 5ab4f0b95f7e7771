// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/palette.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>
#include <iterator>

#include "cases/grammar/units.hpp"
#include "cases/meaning/catalogue.hpp"
#include "cases/meaning/shelf.hpp"
#include "cases/text/words.hpp"
#include "materials/conductivity.hpp"
#include "materials/laws/basis.hpp"
#include "materials/moisture.hpp"

namespace quoin::cases {

using materials::Material;

namespace {

/// Words for a layer of air, which is no material of the catalogue.
bool is_air(std::string_view name) {
  constexpr std::string_view words[] = {"air",    "air gap", "air layer", "air space",
                                        "cavity", "gap",     "void"};
  return std::find(std::begin(words), std::end(words), name) != std::end(words);
}

}  // namespace

Palette::Palette(FaultList& faults) : faults_(faults) {}

bool Palette::knows(std::string_view name) const {
  return stocks_.find(name) != stocks_.end() || is_on_shelf(name);
}

std::vector<std::string> Palette::names() const {
  std::vector<std::string> all = own_;
  const std::vector<std::string> others = shelf_names();
  all.insert(all.end(), others.begin(), others.end());
  return all;
}

bool Palette::is_cavity(std::string_view name) const {
  const auto found = stocks_.find(name);
  return found != stocks_.end() && found->second && found->second->material.cavity;
}

MembraneId Palette::membrane(const WrittenMembrane& written) {
  return membranes_.add({*written.coat, written.name});
}

void Palette::add_own(const std::vector<Named<WrittenMaterial>>& written) {
  for (const auto& material : written) add_own(material);
}

void Palette::add_own(const Named<WrittenMaterial>& written) {
  const WrittenMaterial& value = written.value;
  if (written.name == nothing) {
    faults_.add(written.mark, {"a material cannot be called 'nothing'", "", "another name",
                               "`fill: nothing` erases what was painted"});
    return;
  }
  std::optional<Stock> own = value.like.empty() ? blank(written) : original(written);
  if (own) {
    own->material.name = written.name;
    apply(value, own->material);
    if (value.moisture && !own->material.cavity && !own->material.air_layer)
      own->moisture = value.moisture;
    for (const std::string& flaw : materials::flaws(own->material)) {
      faults_.add(written.mark,
                  {fmt::format("'{}' contradicts itself: {}", written.name, flaw), "", "", ""});
    }
  }
  check_cavity(written, own);
  check_air_layer(written, own);
  own_.push_back(written.name);
  stocks_[written.name] = std::move(own);
}

/// A cavity has what makes it one and nothing else; nothing else has a flow.
void Palette::check_cavity(const Named<WrittenMaterial>& written, const std::optional<Stock>& own) {
  const Node& node = *written.node;
  if (node.kind != Node::Kind::map) return;  // said already
  const bool is_new = node.find("cavity") != nullptr;
  const Entry* flow = node.find("flow");
  if (!is_new && !(own && own->material.cavity)) {
    if (flow == nullptr || has_mistyped(node, "cavity")) return;
    faults_.add(flow->mark, {"only an air cavity has a flow", "", "cavity: unventilated",
                             "remove `flow`, or add `cavity`"});
    return;
  }
  if (is_new && flow == nullptr && !has_mistyped(node, "flow")) {
    faults_.add(written.mark,
                {fmt::format("'flow' is missing in '{}'", written.name), "",
                 "flow: along x, or along y: which way the heat crosses the cavity", ""});
  }
  refuse_values(written, "an air cavity", "cavity and flow: its shape tells the rest", is_new);
}

/// An air layer has what makes it one and nothing else; nothing else has a way the heat goes.
void Palette::check_air_layer(const Named<WrittenMaterial>& written,
                              const std::optional<Stock>& own) {
  const Node& node = *written.node;
  if (node.kind != Node::Kind::map) return;  // said already
  const bool is_new = node.find("air layer") != nullptr;
  const auto what_it_has = [&]() -> const Entry* {
    for (const std::string_view key : {"heat goes", "openings", "layer resistance"}) {
      if (const Entry* entry = node.find(key)) return entry;
    }
    return nullptr;
  };
  if (is_new || (own && own->material.air_layer && what_it_has() == nullptr)) {
    refuse_values(written, "an air layer",
                  "its thickness, which way the heat goes, and its openings", is_new);
    const Entry* cavity = node.find("cavity");
    if (cavity != nullptr) {
      faults_.add(cavity->mark, {"a cavity of a frame and a layer of a wall are two things", "",
                                 "one of: cavity, air layer", "remove one of the two"});
    }
    const Entry* openings = node.find("openings");
    if (openings != nullptr && node.find("layer resistance") != nullptr) {
      faults_.add(openings->mark, {"what an air layer resists is given twice", "",
                                   "one of: openings, layer resistance", "remove one of the two"});
    }
    return;
  }
  const Entry* only = what_it_has();
  if (only != nullptr && !has_mistyped(node, "air layer")) {
    faults_.add(only->mark,
                {only->key == "heat goes" ? "only an air layer says which way the heat goes"
                                          : fmt::format("only an air layer has '{}'", only->key),
                 "", "air layer: 50", fmt::format("remove `{}`, or add `air layer`", only->key)});
  }
}

/// Says of each key of an ordinary material that air has no such value.
void Palette::refuse_values(const Named<WrittenMaterial>& written, std::string_view what,
                            std::string_view expected, bool with_like) {
  for (const std::string_view key :
       {"like", "conductivity", "density", "saturation", "moisture at 80 %", "vapour resistance",
        "law", "law source", "law confidence", "moisture"}) {
    const Entry* entry = written.node->find(key);
    if (entry == nullptr || (key == "like" && !with_like)) continue;
    faults_.add(entry->mark, {fmt::format("{} has no '{}'", what, key), "", std::string(expected),
                              fmt::format("remove `{}`", key)});
  }
}

std::optional<Palette::Stock> Palette::original(const Named<WrittenMaterial>& written) {
  const std::string& like = written.value.like;
  if (const auto own = stocks_.find(like); own != stocks_.end()) return own->second;
  if (const Material* material = from_shelf(like)) return Stock{*material, {}};
  faults_.add(written.node->find("like")->value.mark, [&]() -> Complaint {
    return {fmt::format("unknown material '{}'", like), like,
            "an own material further up, or one that `quoin materials` lists",
            did_you_mean(like, names())};
  });
  return std::nullopt;
}

std::optional<Palette::Stock> Palette::blank(const Named<WrittenMaterial>& written) {
  const Node& node = *written.node;
  if (node.kind != Node::Kind::map) return std::nullopt;                     // said already
  if (written.value.cavity && written.value.air_layer) return std::nullopt;  // said elsewhere
  if (written.value.cavity) return Stock{materials::cavity_air({*written.value.cavity}), {}};
  if (written.value.air_layer) {
    return Stock{
        materials::air_of({*written.value.air_layer,
                           written.value.heat.value_or(materials::HeatDirection::horizontal),
                           written.value.openings.value_or(0.0), written.value.layer_resistance}),
        {}};
  }
  for (const std::string_view key : {"cavity", "air layer"}) {
    if (node.find(key) != nullptr || has_mistyped(node, key)) return std::nullopt;
  }
  if (written.value.conductivity) return Stock();
  if (node.find("conductivity") == nullptr && !has_mistyped(node, "conductivity")) {
    faults_.add(node.mark, [&]() -> Complaint {
      return {fmt::format("'conductivity' is missing in '{}'", written.name), "",
              "a conductivity, or `like` another material",
              is_on_shelf(written.name) ? fmt::format("write like: {}", written.name)
                                        : did_you_mean(written.name, names())};
    });
  }
  return std::nullopt;
}

const Palette::Stock* Palette::stock(PlacedName name) {
  auto found = stocks_.find(name.name);
  if (found == stocks_.end()) {
    const Material* material = from_shelf(name.name);
    if (material == nullptr) {
      faults_.add(name.mark, [&]() -> Complaint {
        return {fmt::format("unknown material '{}'", name.name), name.name,
                "a name in `materials`, or one that `quoin materials` lists",
                is_air(name.name) ? "name a layer of air in `materials`: {air layer: 50}, in mm"
                                  : did_you_mean(name.name, names())};
      });
      return nullptr;
    }
    found = stocks_.emplace(name.name, Stock{*material, {}}).first;
  }
  return found->second ? &*found->second : nullptr;
}

std::optional<double> Palette::content(PlacedName name, const Stock& stock,
                                       const std::optional<WrittenMoisture>& moisture) {
  if (!moisture) return 0.0;
  const auto result = materials::moisture_of(stock.material, moisture->state);
  if (const auto* unknown = std::get_if<materials::UnknownMoisture>(&result)) {
    faults_.add(name.mark, {fmt::format("the moisture of '{}' cannot be known", name.name),
                            moisture->text, "", unknown->reason});
    return std::nullopt;
  }
  const double content = std::get<double>(result);
  const Material& material = stock.material;
  const double most = material.saturation ? material.saturation->value
                                          : materials::pore_space(material.density.value);
  if (content > most * (1 + 1e-9)) {
    faults_.add(
        name.mark,
        {fmt::format("'{}' cannot hold that much water", name.name), moisture->text,
         fmt::format("at most {}, {}", shown(most, Measure::water_volume),
                     material.saturation ? "its saturation" : "the pores that its density leaves"),
         "is it % of volume or of mass? A meter's reading is neither"});
    return std::nullopt;
  }
  return content;
}

std::optional<RegionId> Palette::region(PlacedName name,
                                        const std::optional<WrittenMoisture>& moisture,
                                        std::optional<materials::Part> part) {
  const Stock* found = stock(name);
  if (found == nullptr) return std::nullopt;
  const bool is_cavity = found->material.cavity.has_value();
  if ((is_cavity || found->material.air_layer) && moisture) {
    faults_.add(name.mark, {fmt::format("the air {} '{}' holds no water",
                                        is_cavity ? "cavity" : "layer", name.name),
                            moisture->text, "", "remove `moisture`"});
    return std::nullopt;
  }
  const auto& state = moisture ? moisture : found->moisture;
  std::optional<double> water = content(name, *found, state);
  if (!water) return std::nullopt;
  std::optional<double> driest, wettest;
  if (state && state->to) {
    const auto other = content(name, *found, WrittenMoisture{*state->to, state->text, {}});
    if (!other) return std::nullopt;
    driest = std::min(*water, *other);
    wettest = std::max(*water, *other);
    water = (*driest + *wettest) / 2;
  }
  const materials::Part use = part.value_or(found->material.part);
  const auto key = std::tuple(name.name, *water, use);
  if (const auto known = known_.find(key); known != known_.end() && !is_cavity)
    return known->second;
  const RegionId id = regions_.add(
      {name.name, found->material, *water, state ? state->text : "", use, driest, wettest});
  known_.emplace(key, id);
  return id;
}

}  // namespace quoin::cases
