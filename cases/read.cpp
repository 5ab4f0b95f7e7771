// SPDX-License-Identifier: Apache-2.0
#include "cases/read.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <set>
#include <string_view>
#include <utility>

#include "cases/grammar/reader.hpp"
#include "cases/meaning/climate.hpp"
#include "cases/meaning/criteria.hpp"
#include "cases/meaning/drawn.hpp"
#include "cases/meaning/enough.hpp"
#include "cases/meaning/frame_corners.hpp"
#include "cases/meaning/merge.hpp"
#include "cases/meaning/open_layers.hpp"
#include "cases/meaning/palette.hpp"
#include "cases/meaning/placed_probes.hpp"
#include "cases/meaning/plain_parts.hpp"
#include "cases/meaning/read_readings.hpp"
#include "cases/meaning/read_survey.hpp"
#include "cases/meaning/recipe_remarks.hpp"
#include "cases/meaning/shelf.hpp"
#include "cases/meaning/spaces.hpp"
#include "cases/meaning/unused_spaces.hpp"
#include "cases/meaning/vapour.hpp"
#include "cases/meaning/wall_remarks.hpp"
#include "cases/text/faults.hpp"
#include "cases/text/file_kind.hpp"
#include "cases/text/sha256.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

constexpr std::string_view default_name = "as found";
constexpr std::size_t most_variants = 100;
/// Readings taken at a smaller difference between the spaces, K, say little. Common practice.
constexpr double least_difference = 5.0;
/// Keys that belong to the case as a whole.
constexpr std::array<std::string_view, 5> common_keys{"quoin", "title", "note", "survey",
                                                      "variants"};

void check_names(const Document& document, const Shelf& shelf, FaultList& faults) {
  std::map<std::string_view, Mark> spaces;
  for (const auto& space : document.spaces) {
    spaces.emplace(space.name, space.mark);
    if (shelf.has(space.name)) {
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

/// A factor from readings divides by the difference of the temperatures when they were taken.
void remark_on_small_difference(const Document& document, const Per<SpaceId, Space>& spaces,
                                std::vector<Remark>& remarks) {
  if (document.readings.empty() || spaces.size() == 0) return;
  const auto [coldest, warmest] = std::minmax_element(
      spaces.begin(), spaces.end(),
      [](const Space& a, const Space& b) { return a.temperature < b.temperature; });
  const double span = warmest->temperature - coldest->temperature;
  if (span >= least_difference) return;
  remarks.push_back({fmt::format("the temperatures differ by only {:.3g} K: what readings taken "
                                 "like this tell is uncertain",
                                 span),
                     document.readings.front().mark.line});
}

/// Inside spaces that no humidity criterion can judge, where others are judged.
void remark_on_unknown_humidity(const Document& document, const Variant& variant,
                                std::vector<Remark>& remarks) {
  const bool judged = std::any_of(
      variant.criteria.begin(), variant.criteria.end(),
      [](const Criterion& criterion) { return materials::needs_humidity(criterion.test); });
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const Space& space = variant.spaces[id];
    if (!judged || space.is != SpaceKind::inside || space.humidity || space.air != id) continue;
    const bool by_month = variant.climate && variant.climate->inside_humidity;
    remarks.push_back(
        {by_month
             ? fmt::format("'{}' has no humidity but that of the climate: its surfaces are "
                           "judged by it over the year only",
                           space.name)
             : fmt::format("'{}' has no humidity: its surfaces are not judged by it", space.name),
         document.spaces[id.index].mark.line});
  }
}

/// Rules for the moisture inside that the months of a climate take the place of.
void remark_on_overruled_moisture(const Variant& variant, const Entry& climate,
                                  std::vector<Remark>& remarks) {
  if (!variant.climate || !variant.climate->inside_humidity) return;
  for (const Space& space : variant.spaces) {
    if (space.is != SpaceKind::inside || !space.moisture) continue;
    remarks.push_back(
        {fmt::format("over the year the 'inside humidity' of the climate takes the place of the "
                     "'{}' of '{}', which stays for the case as stated",
                     materials::name_of(*space.moisture), space.name),
         climate.mark.line});
  }
}

/// Spaces that ask for strips in frame corners where there are no such corners.
void remark_on_missing_corners(const Document& document, Variant& variant) {
  for (const SpaceId id : geometry::ids(variant.spaces)) {
    const Space& space = variant.spaces[id];
    if (!space.frame_corners || strips_of(variant.spaces, id).valid()) continue;
    variant.remarks.push_back(
        {fmt::format("'{}' meets no re-entrant corner of frame or glazing (`part`): nothing is "
                     "done for its frame corners",
                     space.name),
         document.spaces[id.index].mark.line});
  }
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

/// One variant from its tree. `document`: the keys of the tree, as read; `faults_before`: how many
/// faults were met before it was.
Variant variant_of(const Node& tree, const Document& document, std::size_t faults_before,
                   const Files& files, Shelf& shelf, FaultList& faults) {
  Variant variant;
  variant.cut = document.cut.value_or(Cut::horizontal);
  check_spaces_present(tree, document, faults);
  check_names(document, shelf, faults);
  variant.spaces = spaces_of(document.spaces, files, faults, variant.remarks);
  Palette palette(shelf, faults);
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

/// The tree of a variant: that of the case with what the variant replaces.
Node merged(const Node& tree, const Entry& variant, FaultList& faults) {
  Node result = tree;
  Node replaced = variant.value;
  for (const std::string_view key : common_keys) {
    const Entry* entry = replaced.find(key);
    if (entry == nullptr) continue;
    faults.add(entry->mark, {fmt::format("a variant cannot replace '{}'", key), "",
                             "keys that describe the building", ""});
    replaced.entries.erase(replaced.entries.begin() + (entry - replaced.entries.data()));
  }
  merge(result, replaced, faults);
  return result;
}

bool replaces_nothing(const Node& node) {
  return node.kind == Node::Kind::nothing || (node.kind == Node::Kind::map && node.entries.empty());
}

/// Reads the case as written and each of its variants.
std::vector<Variant> variants_of(const Node& tree, const Document& document, const Node* list,
                                 const Files& files, Shelf& shelf, FaultList& faults) {
  std::vector<Variant> variants;
  std::vector<AskedEnough> asked;
  std::vector<std::vector<SpaceUse>> uses;
  const auto add = [&](const Node& of, const Document& read_of, std::size_t faults_before,
                       std::string name) {
    variants.push_back(variant_of(of, read_of, faults_before, files, shelf, faults));
    variants.back().name = std::move(name);
    asked.push_back(asked_enough(of));
    if (faults.empty()) uses.push_back(uses_of(read_of, variants.back()));
  };
  const auto check_all = [&] {
    if (faults.empty()) check_enough(variants, asked, faults);
    if (faults.empty()) check_uses(uses, faults);
  };
  add(tree, document, 0, std::string(default_name));
  if (list == nullptr || list->kind == Node::Kind::nothing) {
    check_all();
    return variants;
  }
  if (list->kind != Node::Kind::map) {
    faults.add(list->mark,
               {"'variants' is a map of names", words_of(*list), "name: {keys to replace}", ""});
    return variants;
  }
  if (list->entries.size() > most_variants) {
    faults.add(list->mark,
               {"the case has too many variants", fmt::format("{} variants", list->entries.size()),
                fmt::format("at most {}", most_variants), "split the case"});
    return variants;
  }
  for (const Entry& entry : list->entries) {
    if (replaces_nothing(entry.value)) {
      if (variants.size() == 1 && &entry == &list->entries.front()) {
        variants.front().name = entry.key;
      } else {
        faults.enter_variant("");  // a fault of the list, not of the variant before
        faults.add(entry.mark, {fmt::format("the variant '{}' replaces nothing", entry.key), "",
                                "keys to replace; only the first variant may be empty: it then "
                                "names the case as written",
                                ""});
      }
      continue;
    }
    faults.enter_variant(entry.key);
    check_name(entry, faults);
    if (entry.key == variants.front().name) {
      faults.add(entry.mark, {fmt::format("'{}' is the name of the case as written", entry.key), "",
                              "another name", ""});
    }
    if (entry.value.kind != Node::Kind::map) {
      faults.add(entry.value.mark, {fmt::format("the variant '{}' is no map", entry.key),
                                    words_of(entry.value), "keys to replace", ""});
      continue;
    }
    const std::size_t faults_before = faults.met();
    const Node changed = merged(tree, entry, faults);
    Document read_again;
    read(changed, "a case", faults, read_again);
    add(changed, read_again, faults_before, entry.key);
    if (faults.empty()) remark_on_losses(variants.front(), entry.mark, variants.back());
  }
  check_all();
  return variants;
}

/// What was read on site, and how.
void read_survey(const Node& tree, const Document& document, const Files& files, bool in_house,
                 Case& result, FaultList& faults) {
  const Entry* entry = tree.find("survey");
  check_readings(document.readings, entry != nullptr || in_house, faults);
  if (entry == nullptr || !document.survey) return;
  const std::vector<ReadSection> sections{{"", &result.variants.front()}};
  result.survey = survey_of(*document.survey, entry->value, sections, files, faults);
  add_readings("", document.readings, *result.survey, faults);
  result.household = document.survey->household.value_or(Household{});
}

/// What a tree says; with `in_house` readings may name instruments of the house's survey.
void read_tree(const Node& tree, const Files& files, bool in_house, Shelf& shelf, Case& result,
               FaultList& faults) {
  Document document;
  read(tree, "a case", faults, document);
  if (document.format != 1) return;
  result.title = document.title;
  result.note = document.note;
  result.variants = variants_of(tree, document, document.variants, files, shelf, faults);
  if (faults.empty()) read_survey(tree, document, files, in_house, result, faults);
}

Case read_text(std::string_view text, const std::string& file, const Files& files, bool in_house) {
  FaultList faults(file, text);
  Case result;
  result.sha256 = sha256(text);
  result.text = text;
  Shelf shelf;
  if (const std::optional<Node> tree = tree_of(text, faults))
    read_tree(*tree, files, in_house, shelf, result, faults);
  if (!faults.empty()) {
    if (auto other = fault_of_kind(text, file, FileKind::section)) throw InputError({*other});
    throw InputError(faults.sorted());
  }
  return result;
}

}  // namespace

Case case_of(std::string_view text, const std::string& file, const Files& files) {
  return read_text(text, file, files, false);
}

Case case_of(const Node& tree, std::string_view text, const std::string& file, const Files& files,
             Shelf& shelf) {
  FaultList faults(file, text);
  Case result;
  result.sha256 = sha256(text);
  result.text = text;
  read_tree(tree, files, false, shelf, result, faults);
  if (!faults.empty()) throw InputError(faults.sorted());
  return result;
}

Case case_of_house(std::string_view text, const std::string& file, const Files& files) {
  return read_text(text, file, files, true);
}

}  // namespace quoin::cases
