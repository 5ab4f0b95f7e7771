// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/drawn.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <limits>
#include <optional>
#include <string>
#include <utility>
#include <variant>

#include "cases/grammar/recipe_words.hpp"
#include "cases/meaning/bands.hpp"
#include "cases/meaning/outlines.hpp"
#include "cases/meaning/recipe_reader.hpp"
#include "cases/meaning/spaces.hpp"
#include "cases/text/words.hpp"

namespace quoin::cases {
namespace {

constexpr std::string_view sheet_key = "sheet";
constexpr std::string_view bands_key = "bands";

template <class... T>
std::vector<std::string> recipe_names(const std::variant<T...>*) {
  return {std::string(T::name)...};
}

std::vector<std::string> recipe_names() {
  return recipe_names(static_cast<const geometry::Recipe*>(nullptr));
}

/// Draws one section.
class Draughtsman {
 public:
  Draughtsman(Palette& palette, const Per<SpaceId, Space>& spaces, FaultList& faults)
      : palette_(palette), spaces_(spaces), faults_(faults) {}

  void draw_recipe(const Entry& entry) {
    try_recipes(entry, static_cast<const geometry::Recipe*>(nullptr));
  }

  void draw_sheet(const Node& list) {
    if (list.kind != Node::Kind::sequence || list.items.empty()) {
      faults_.add(list.mark, {"a sheet is a list of painted areas", words_of(list),
                              "- {fill: name, x: [0, 330], y: [0, 1000]}", ""});
      return;
    }
    for (const Node& item : list.items) draw_patch(item);
  }

  void draw_bands(const Node& list) {
    if (list.kind == Node::Kind::nothing) return;
    if (list.kind != Node::Kind::sequence) {
      faults_.add(list.mark, {"bands are a list", words_of(list),
                              "- {of: material, x: [0, 100], moisture: damp}", ""});
      return;
    }
    for (const Node& item : list.items) draw_band(item);
  }

  Drawn drawn;

 private:
  template <class... T>
  void try_recipes(const Entry& entry, const std::variant<T...>*) {
    (try_recipe<T>(entry), ...);
  }

  template <class T>
  void try_recipe(const Entry& entry) {
    if (entry.key != T::name) return;
    if (entry.value.kind != Node::Kind::map) {
      faults_.add(entry.value.mark, {fmt::format("the recipe '{}' has no inputs", entry.key),
                                     words_of(entry.value), "a map: {layers: [...], ...}",
                                     fmt::format("`quoin new {}` prints one", entry.key)});
      return;
    }
    const std::size_t faults_before = faults_.met();
    T recipe;
    RecipeReader reader(entry.value, fmt::format("the recipe '{}'", entry.key), faults_, palette_,
                        spaces_);
    describe(reader, recipe);
    reader.finish();
    if (faults_.met() != faults_before) return;
    if (const auto objection = geometry::objection(recipe)) {
      faults_.add(entry.mark, {fmt::format("this {} cannot be built", entry.key), *objection, "",
                               "change the measures that it names"});
      return;
    }
    drawn.drawing = geometry::drawing_of(recipe);
    drawn.recipe = recipe;
    drawn.mark = entry.mark;
    drawn.marks.assign(drawn.drawing.sheet.size(), entry.mark);
  }

  void draw_membrane(const Node& node) {
    const std::size_t faults_before = faults_.met();
    WrittenMembraneLine written;
    read(node, "a membrane", faults_, written);
    if (node.find("line") == nullptr) {
      faults_.add(node.mark, {"'line' is missing in a membrane", "", "line: [[x, y], [x, y]]",
                              "a membrane has no area: say where it begins and ends"});
    }
    if (faults_.met() != faults_before || !written.membrane.coat || !written.line) return;
    drawn.drawing.sheet.push_back(
        {palette_.membrane(written.membrane), *written.line, std::nullopt});
    drawn.marks.push_back(node.mark);
  }

  void draw_patch(const Node& node) {
    if (node.kind == Node::Kind::map && node.find(WrittenMembrane::key) != nullptr) {
      draw_membrane(node);
      return;
    }
    const std::size_t faults_before = faults_.met();
    WrittenPatch written;
    read(node, "a painted area", faults_, written);
    if (node.kind != Node::Kind::map) return;
    const auto outline = outline_of(written, node, faults_);
    const auto fill = written.fill.empty() ? std::nullopt : fill_of(written, node);
    if (!outline || !fill || faults_.met() != faults_before) return;
    drawn.drawing.sheet.push_back({*fill, *outline, std::nullopt});
    drawn.marks.push_back(node.mark);
  }

  [[nodiscard]] std::optional<geometry::Fill> fill_of(const WrittenPatch& patch, const Node& node) {
    const Mark mark = node.find("fill")->value.mark;
    if (palette_.knows(patch.fill)) {
      const auto region = palette_.region({patch.fill, mark}, patch.moisture, patch.part);
      return region ? std::optional<geometry::Fill>(*region) : std::nullopt;
    }
    for (const std::string_view key : {"moisture", "part"}) {
      if (const Entry* entry = node.find(key)) {
        faults_.add(entry->mark, {fmt::format("only a material has a {}", key), patch.fill,
                                  "a material", fmt::format("remove `{}`", key)});
      }
    }
    if (patch.fill == nothing) return geometry::Fill();
    if (const SpaceId space = find_space(spaces_, patch.fill); space.valid())
      return geometry::Fill(space);
    faults_.add(mark, [&]() -> Complaint {
      std::vector<std::string> known = names_of(spaces_);
      for (std::string& name : palette_.names()) known.push_back(std::move(name));
      return {fmt::format("'{}' is neither a material nor a space", patch.fill), patch.fill,
              "a name in `spaces` or `materials`, one that `quoin materials` lists, or "
              "`nothing`",
              did_you_mean(patch.fill, known)};
    });
    return std::nullopt;
  }

  void draw_band(const Node& node) {
    const std::size_t faults_before = faults_.met();
    WrittenBand band;
    read(node, "a band", faults_, band);
    if (node.kind != Node::Kind::map) return;
    if (!band.moisture && node.find("moisture") == nullptr) {
      faults_.add(node.mark, {"'moisture' is missing in a band", "", "moisture: damp", ""});
    }
    if (faults_.met() != faults_before || drawn.drawing.sheet.empty()) return;
    const Mark mark = node.find("of")->value.mark;
    const auto painted = painted_regions(band.of);
    if (painted.empty()) {
      const bool left_out = faults_.met() != faults_at_start_ && palette_.knows(band.of);
      if (left_out) return;
      faults_.add(mark, {fmt::format("the section shows no '{}'", band.of), band.of,
                         "one of: " + joined(painted_materials(), ", "), ""});
      return;
    }
    const Interval everywhere_x = extent([](geometry::Point p) { return p.x; });
    const Interval everywhere_y = extent([](geometry::Point p) { return p.y; });
    const Interval x = band.x.value_or(everywhere_x);
    const Interval y = band.y.value_or(everywhere_y);
    if (auto complaint = misplaced(drawn.drawing.sheet, painted, {x, y}, band.of)) {
      faults_.add(node.mark, std::move(*complaint));
      return;
    }
    for (const RegionId over : painted) {
      const auto region =
          palette_.region({band.of, mark}, band.moisture, palette_.regions()[over].part);
      if (!region) return;
      drawn.drawing.sheet.push_back(
          {*region, geometry::rectangle(x.from, x.to, y.from, y.to), over});
      drawn.marks.push_back(node.mark);
    }
  }

  /// The regions of a material on the sheet so far, each once.
  [[nodiscard]] std::vector<RegionId> painted_regions(std::string_view name) const {
    std::vector<RegionId> found;
    for (const geometry::Patch& patch : drawn.drawing.sheet) {
      const auto* region = std::get_if<RegionId>(&patch.fill);
      if (region != nullptr && palette_.regions()[*region].name == name &&
          std::find(found.begin(), found.end(), *region) == found.end())
        found.push_back(*region);
    }
    return found;
  }

  [[nodiscard]] std::vector<std::string> painted_materials() const {
    std::vector<std::string> names;
    for (const geometry::Patch& patch : drawn.drawing.sheet) {
      const auto* region = std::get_if<RegionId>(&patch.fill);
      if (region == nullptr) continue;
      const std::string& name = palette_.regions()[*region].name;
      if (std::find(names.begin(), names.end(), name) == names.end()) names.push_back(name);
    }
    return names;
  }

  /// From the least to the greatest coordinate of the sheet.
  template <class Coordinate>
  [[nodiscard]] Interval extent(Coordinate coordinate) const {
    Interval result{infinite, -infinite};
    for (const geometry::Patch& patch : drawn.drawing.sheet) {
      for (const geometry::Point point : patch.outline) {
        result.from = std::min(result.from, coordinate(point));
        result.to = std::max(result.to, coordinate(point));
      }
    }
    return result;
  }

  Palette& palette_;
  const Per<SpaceId, Space>& spaces_;
  FaultList& faults_;
  std::size_t faults_at_start_ = faults_.met();
};

/// The one entry of a section that is a recipe or a sheet; null, with faults, where there is none.
const Entry* drawing_entry(const Node& node, FaultList& faults) {
  std::vector<std::string> known = recipe_names();
  known.emplace_back(sheet_key);
  const std::string wanted = "one of: " + joined(known, ", ");
  const Entry* found = nullptr;
  bool unknown = false;
  for (const Entry& entry : node.entries) {
    if (entry.key == bands_key) continue;
    if (std::find(known.begin(), known.end(), entry.key) == known.end()) {
      unknown = true;
      std::vector<std::string> all = known;
      all.emplace_back(bands_key);
      const std::string_view drawn_by = recipes_for(entry.key);
      faults.add(entry.mark,
                 {fmt::format("unknown key '{}' in 'section'", entry.key), entry.key,
                  wanted + "; and bands",
                  !drawn_by.empty() ? fmt::format("a {} is drawn by: {}", entry.key, drawn_by)
                                    : did_you_mean(entry.key, all)});
    } else if (found != nullptr) {
      faults.add(entry.mark, {"a section is one recipe or one sheet, not both",
                              fmt::format("{} and {}", found->key, entry.key), wanted,
                              fmt::format("remove one; in a variant `{}: ~` does it", found->key)});
    } else {
      found = &entry;
    }
  }
  if (found == nullptr && !unknown)
    faults.add(node.mark, {"the section is empty", words_of(node), wanted, ""});
  return found;
}

}  // namespace

void show(geometry::Drawing drawing, Variant& variant) {
  variant.sheet = std::move(drawing.sheet);
  variant.flanks = std::move(drawing.flanks);
  variant.thickness = drawing.thickness;
  variant.places = std::move(drawing.places);
  variant.timber_ends = std::move(drawing.timber_ends);
  variant.halves = drawing.halves;
  variant.floor_alone = std::move(drawing.floor_alone);
  variant.close_up = std::move(drawing.close_up);
  if (const SpaceId sinks = drawing.heat_sinks_in; sinks.valid()) {
    Space& space = variant.spaces[sinks];
    if (!space.heat && !space.resistance) space.heat = materials::HeatDirection::down;
  }
}

Drawn drawn_section(const Node& node, Palette& palette, const Per<SpaceId, Space>& spaces,
                    FaultList& faults) {
  if (node.kind != Node::Kind::map) {
    faults.add(node.mark, {"'section' is a recipe or a sheet", words_of(node),
                           "one of: " + joined(recipe_names(), ", ") + ", sheet", ""});
    return {};
  }
  Draughtsman draughtsman(palette, spaces, faults);
  const Entry* entry = drawing_entry(node, faults);
  if (entry == nullptr) return {};
  draughtsman.drawn.mark = entry->mark;
  if (entry->key == sheet_key) {
    draughtsman.draw_sheet(entry->value);
  } else {
    draughtsman.draw_recipe(*entry);
  }
  if (const Entry* bands = node.find(bands_key)) draughtsman.draw_bands(bands->value);
  return std::move(draughtsman.drawn);
}

}  // namespace quoin::cases
