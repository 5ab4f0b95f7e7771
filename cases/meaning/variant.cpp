// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/variant.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <map>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "cases/meaning/climate.hpp"
#include "cases/meaning/criteria.hpp"
#include "cases/meaning/drawn.hpp"
#include "cases/meaning/enough.hpp"
#include "cases/meaning/frame_corners.hpp"
#include "cases/meaning/open_layers.hpp"
#include "cases/meaning/palette.hpp"
#include "cases/meaning/placed_probes.hpp"
#include "cases/meaning/plain_parts.hpp"
#include "cases/meaning/read_readings.hpp"
#include "cases/meaning/recipe_remarks.hpp"
#include "cases/meaning/shelf.hpp"
#include "cases/meaning/space_remarks.hpp"
#include "cases/meaning/spaces.hpp"
#include "cases/meaning/vapour.hpp"
#include "cases/meaning/wall_remarks.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

void check_names(const Document& document, FaultList& faults) {
  std::map<std::string_view, Mark> spaces;
  for (const auto& space : document.spaces) {
    spaces.emplace(space.name, space.mark);
    if (is_on_shelf(space.name)) {
      faults.add(space.mark,
                 {fmt::format("'{}' is the name of a material of the catalogue", space.name), "",
                  "another name for the space", ""});
    }
  }
  for (const auto& material : document.materials) {
    const auto space = spaces.find(material.name);
    if (space == spaces.end()) continue;
    faults.add(material.mark,
               {fmt::format("'{}' is the name of a space, too", material.name), "",
                fmt::format("another name; the space is in line {}", space->second.line),
                "rename one of the two"});
  }
}

std::vector<Reading> readings_of(const Document& document, FaultList& faults) {
  constexpr double usual = 0.5;  // K, give or take
  std::vector<Reading> readings;
  std::set<std::string_view> probes;
  for (const auto& probe : document.probes) probes.insert(probe.name);
  for (const auto& reading : document.readings) {
    if (probes.count(reading.name) == 0) {
      faults.add(reading.mark, [&]() -> Complaint {
        const std::vector<std::string> names(probes.begin(), probes.end());
        return {
            fmt::format("there is no probe '{}'", reading.name), reading.name,
            names.empty() ? "a probe: `probes: {name: [x, y]}`" : "one of: " + joined(names, ", "),
            did_you_mean(reading.name, names)};
      });
    }
    if (reading.value.temperature) {
      readings.push_back(
          {reading.name, *reading.value.temperature, reading.value.plus_or_minus.value_or(usual)});
    }
  }
  return readings;
}

void check_spaces_present(const Node& tree, const Document& document, FaultList& faults) {
  if (!document.spaces.empty()) return;
  const Entry* entry = tree.find("spaces");
  if (entry != nullptr && entry->value.kind != Node::Kind::map &&
      entry->value.kind != Node::Kind::nothing)
    return;  // said already
  faults.add(entry == nullptr ? tree.mark : entry->mark,
             {"the case has no spaces", "", "spaces: {hall: {is: inside, temperature: 20}, ...}",
              "`quoin new wall` prints a case to start from"});
}

/// A recipe that stands upright is drawn in a vertical cut, whatever is said.
void check_cut(const Node& tree, const Document& document, const Drawn& drawn, FaultList& faults) {
  if (!drawn.recipe || !geometry::is_vertical(*drawn.recipe) || document.cut != Cut::horizontal)
    return;
  faults.add(tree.find("cut")->value.mark, {"this recipe is drawn in a vertical cut", "horizontal",
                                            "vertical", "leave 'cut' out"});
}

/// Gives ventilated layers their part; with a fault where that cannot be.
void ventilate(const Drawn& drawn, Variant& variant, FaultList& faults) {
  if (const auto objection = open_layers(variant)) {
    faults.add(drawn.mark, {"a ventilated layer cannot be taken into account", "", "", *objection});
    return;
  }
  for (std::string& text : remarks_on_open_layers(variant))
    variant.remarks.push_back({std::move(text), drawn.mark.line});
}

void probe_timber_ends(Variant& variant) {
  for (const geometry::NamedPlace& end : variant.timber_ends) {
    const bool named = std::any_of(variant.probes.begin(), variant.probes.end(),
                                   [&](const Probe& probe) { return probe.name == end.name; });
    if (!named) variant.probes.push_back({end.name, end.from});
  }
}

/// What follows from a variant that was read and drawn without a fault.
void finish(const Node& tree, const Document& document, const Palette& palette, Drawn drawn,
            Variant& variant, FaultList& faults) {
  const std::size_t faults_before = faults.met();
  show(std::move(drawn.drawing), variant);
  variant.recipe = std::move(drawn.recipe);
  add_plain_parts(document.plain_parts, variant, faults);
  if (document.psi) variant.psi = *document.psi;
  ventilate(drawn, variant, faults);
  check_resistances(document.criteria, variant, faults);
  if (faults.met() != faults_before) return;
  if (variant.recipe) {
    if (geometry::is_vertical(*variant.recipe)) variant.cut = Cut::vertical;
    for (std::string& text : remarks_on(*variant.recipe, variant.spaces))
      variant.remarks.push_back({std::move(text), drawn.mark.line});
  }
  remark_on_thickness(drawn, variant);
  probe_timber_ends(variant);
  ask_about_vapour(tree, document, palette, variant, faults);
  if (faults.met() != faults_before) return;
  paint_frame_corners(variant);
  remark_on_missing_corners(document, variant);
}

}  // namespace

Variant variant_of(const Node& tree, const Document& document, std::size_t faults_before,
                   const Files& files, FaultList& faults) {
  Variant variant;
  variant.cut = document.cut.value_or(Cut::horizontal);
  check_spaces_present(tree, document, faults);
  check_names(document, faults);
  variant.spaces = spaces_of(document.spaces, files, faults, variant.remarks);
  Palette palette(faults);
  palette.add_own(document.materials);
  Drawn drawn;
  if (document.section != nullptr)
    drawn = drawn_section(*document.section, palette, variant.spaces, faults);
  variant.regions = palette.regions();
  variant.membranes = palette.membranes();
  variant.readings = readings_of(document, faults);
  bool humid = any_humid(document.spaces, variant.spaces);
  if (const Entry* climate = tree.find("climate"); climate != nullptr && document.climate) {
    variant.climate = climate_of(*document.climate, *climate, variant.spaces, files, faults);
    humid = humid || !variant.climate || variant.climate->inside_humidity;  // absent: said already
    remark_on_overruled_moisture(variant, *climate, variant.remarks);
  }
  variant.criteria = criteria_of(document.criteria, humid, faults);
  if (const Entry* enough = tree.find("enough"); enough != nullptr && document.enough)
    variant.enough = enough_of(*document.enough, enough->value, palette, faults);
  if (!document.survey) refuse_impossible(document.readings, variant.spaces, faults);
  remark_on_small_difference(document, variant.spaces, variant.remarks);
  remark_on_unknown_humidity(document, variant, variant.remarks);
  if (document.accuracy) variant.accuracy = *document.accuracy;
  check_cut(tree, document, drawn, faults);
  if (faults.met() != faults_before) return variant;  // what follows relies on what was read
  const std::vector<Named<geometry::Point>> probes =
      placed_probes(document.probes, drawn.drawing, variant.spaces, faults, variant.remarks);
  for (const auto& probe : probes) variant.probes.push_back({probe.name, probe.value});
  check_drawing(drawn, variant, probes, faults, variant.remarks);
  if (faults.met() != faults_before) return variant;
  finish(tree, document, palette, std::move(drawn), variant, faults);
  return variant;
}

}  // namespace quoin::cases
