// SPDX-License-Identifier: Apache-2.0
#include "cases/write_sheet.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <optional>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "cases/grammar/units.hpp"
#include "cases/grammar/writer.hpp"
#include "cases/grammar/written.hpp"
#include "cases/meaning/catalogue.hpp"
#include "cases/meaning/unused_spaces.hpp"
#include "cases/text/yaml_words.hpp"

namespace quoin::cases {
namespace {

using geometry::Fill;
using geometry::Outline;
using geometry::Patch;
using materials::Material;

std::string in_millimetres(double length) {
  return fmt::format("{:.9g}", 1000 * length + 0.0);  // no -0
}

WrittenMaterial written(const Material& material) {
  WrittenMaterial result;
  result.about = material.about;
  if (material.cavity) {
    result.cavity = material.cavity->ventilation;
    result.flow = material.cavity->flow;
    if (material.part != materials::Part::frame) result.part = material.part;
    return result;
  }
  if (material.air_layer) {
    result.air_layer = material.air_layer->thickness;
    if (material.air_layer->heat != materials::HeatDirection::horizontal)
      result.heat = material.air_layer->heat;
    // What its openings came to in a wall is a resistance; as good as outdoors they stay openings.
    result.layer_resistance = material.air_layer->resistance;
    if (!result.layer_resistance && material.air_layer->openings > 0)
      result.openings = material.air_layer->openings;
    return result;
  }
  result.conductivity = material.conductivity;
  if (material.density.value > 0.0) result.density = material.density;
  result.saturation = material.saturation;
  result.moisture_at_80 = material.moisture_at_80;
  result.vapour_resistance = {material.vapour_resistance_dry, material.vapour_resistance_wet};
  result.law = material.law;
  result.law_source = material.law_source;
  if (material.law_confidence != materials::Confidence::stated)
    result.law_confidence = material.law_confidence;
  if (material.part != materials::Part::fabric) result.part = material.part;
  return result;
}

/// Writes the parts of a variant, each as lines.
class SheetWriter {
 public:
  explicit SheetWriter(const Variant& variant) : variant_(variant) {}

  [[nodiscard]] std::string text() const {
    std::string text = fmt::format("quoin: 1\ntitle: {}\ncut: {}\n", yaml_word(variant_.name),
                                   variant_.cut == Cut::horizontal ? "horizontal" : "vertical");
    add(text, "spaces", spaces());
    add(text, "materials", own_materials());
    text += "\nsection:\n";
    add_list(text, "sheet", sheet());
    add_list(text, "bands", bands());
    add(text, "plain parts", plain_parts());
    add(text, "probes", probes());
    add(text, "readings", readings());
    add(text, "criteria", criteria());
    if (variant_.climate) text += "\nclimate: " + climate() + '\n';
    if (const YamlMap map = enough(); !map.empty()) text += "\nenough: " + map.text() + '\n';
    if (variant_.vapour) text += "\nvapour: " + vapour() + '\n';
    if (variant_.drying) text += "\ndrying: " + drying() + '\n';
    text += fmt::format("\naccuracy: {{fRsi: {}, L2D: {}}}\n", variant_.accuracy.factor,
                        with_unit(variant_.accuracy.coupling, Measure::share));
    return text;
  }

 private:
  using Lines = std::vector<std::string>;

  static void add(std::string& text, std::string_view key, const Lines& lines) {
    if (lines.empty()) return;
    text += fmt::format("\n{}:\n", key);
    for (const std::string& line : lines) text += fmt::format("  {}\n", line);
  }

  static void add_list(std::string& text, std::string_view key, const Lines& lines) {
    if (lines.empty()) return;
    text += fmt::format("  {}:\n", key);
    for (const std::string& line : lines) text += fmt::format("    - {}\n", line);
  }

  static std::string entry(std::string_view name, const std::string& value) {
    return yaml_entry(name, value, "\n  ");
  }

  [[nodiscard]] Lines spaces() const {
    Lines lines;
    const Per<SpaceId, char> of_use = spaces_of_use(variant_);
    for (const SpaceId id : geometry::ids(variant_.spaces)) {
      const Space& space = variant_.spaces[id];
      if (space.strips_of.valid()) continue;  // reading paints them again
      if (of_use[id] == 0) continue;          // alone in the file, it would be refused
      WrittenSpace written;
      written.frame_corners = space.frame_corners;
      if (space.behind) {
        written.behind = space.behind;
      } else {
        written.resistance = space.resistance;
      }
      written.heat = space.heat;
      written.sky = space.sky;
      written.evaporation = space.evaporation;
      if (space.air == id) {
        written.is = space.is;
        written.b = space.b;
        for (const Loss& loss : space.losses)
          written.losses.push_back({variant_.spaces[loss.to].name, {}, nullptr, loss.by_metre});
        if (!space.b && space.losses.empty()) written.temperature = space.temperature;
        written.moisture = space.moisture;
        if (!space.moisture) written.humidity = space.humidity;
        written.wind = space.wind;
        written.coat = space.coat;
      } else {
        const Space& air = variant_.spaces[space.air];
        written.like = air.name;
        if (space.heat == air.heat) written.heat.reset();
        if (space.wind != air.wind) written.wind = space.wind;
        if (space.coat && (!air.coat || space.coat->name != air.coat->name))
          written.coat = space.coat;
      }
      lines.push_back(entry(space.name, map_of(written).text()));
    }
    return lines;
  }

  [[nodiscard]] Lines own_materials() const {
    const Catalogue all = catalogue();
    Lines lines;
    std::vector<std::string> done;
    for (const Region& region : variant_.regions) {
      if (std::find(done.begin(), done.end(), region.name) != done.end()) continue;
      done.push_back(region.name);
      const std::string text = material_text(region.material);
      const auto original =
          std::find_if(all.materials.begin(), all.materials.end(),
                       [&](const Material& known) { return material_text(known) == text; });
      if (original == all.materials.end()) {
        lines.push_back(entry(region.name, text));
      } else if (original->name != region.name) {
        YamlMap like;
        like.add("like", yaml_word(original->name));
        lines.push_back(entry(region.name, like.text()));
      }
    }
    return lines;
  }

  [[nodiscard]] Lines sheet() const {
    Lines lines;
    for (const Patch& patch : variant_.sheet) {
      if (patch.only_over || is_strip(patch.fill)) continue;
      YamlMap map;
      if (const MembraneId* id = geometry::membrane_of(patch)) {
        WrittenMembrane written{variant_.membranes[*id].coat, variant_.membranes[*id].name};
        map = map_of(written);
        map.add("line", points(patch.outline));
        lines.push_back(map.text());
        continue;
      }
      if (is_nothing(patch.outline)) continue;
      map.add("fill", yaml_word(name_of(patch.fill)));
      add_place(map, patch.outline);
      if (const auto* id = std::get_if<RegionId>(&patch.fill)) {
        const Region& region = variant_.regions[*id];
        if (!region.state.empty()) map.add("moisture", yaml_word(region.state));
        if (region.part != region.material.part) {
          Writer writer(map);
          std::optional<materials::Part> part = region.part;
          choose_part(writer, part);
        }
      }
      lines.push_back(map.text());
    }
    return lines;
  }

  /// One line wets every region of a material; the patches it became are equal but for the region.
  [[nodiscard]] Lines bands() const {
    Lines lines;
    for (const Patch& patch : variant_.sheet) {
      const auto* id = std::get_if<RegionId>(&patch.fill);
      if (!patch.only_over || id == nullptr) continue;
      const Region& region = variant_.regions[*id];
      YamlMap map;
      map.add("of", yaml_word(region.name));
      add_place(map, patch.outline);
      map.add("moisture", yaml_word(region.state));
      if (lines.empty() || lines.back() != map.text()) lines.push_back(map.text());
    }
    return lines;
  }

  /// Whether reading paints it without being asked.
  [[nodiscard]] bool is_strip(const Fill& fill) const {
    const auto* space = std::get_if<SpaceId>(&fill);
    return space != nullptr && variant_.spaces[*space].strips_of.valid();
  }

  [[nodiscard]] std::string_view name_of(const Fill& fill) const {
    if (const auto* region = std::get_if<RegionId>(&fill)) return variant_.regions[*region].name;
    if (const auto* space = std::get_if<SpaceId>(&fill)) return variant_.spaces[*space].name;
    return nothing;
  }

  static Interval extent(const Outline& outline, double geometry::Point::*coordinate) {
    const auto [least, most] = std::minmax_element(
        outline.begin(), outline.end(),
        [&](const auto& a, const auto& b) { return a.*coordinate < b.*coordinate; });
    return {(*least).*coordinate, (*most).*coordinate};
  }

  /// Thinner than can be written: a recipe may leave such a sliver by rounding, and no section has
  /// it.
  static bool is_nothing(const Outline& outline) {
    const Interval x = extent(outline, &geometry::Point::x);
    const Interval y = extent(outline, &geometry::Point::y);
    return in_millimetres(x.from) == in_millimetres(x.to) ||
           in_millimetres(y.from) == in_millimetres(y.to);
  }

  static void add_place(YamlMap& map, const Outline& outline) {
    const Interval x = extent(outline, &geometry::Point::x);
    const Interval y = extent(outline, &geometry::Point::y);
    const bool is_rectangle =
        outline.size() == 4 && std::all_of(outline.begin(), outline.end(), [&](auto corner) {
          return (corner.x == x.from || corner.x == x.to) &&
                 (corner.y == y.from || corner.y == y.to);
        });
    if (is_rectangle) {
      map.add("x", fmt::format("[{}, {}]", in_millimetres(x.from), in_millimetres(x.to)));
      map.add("y", fmt::format("[{}, {}]", in_millimetres(y.from), in_millimetres(y.to)));
      return;
    }
    map.add("outline", points(outline));
  }

  static std::string points(const Outline& outline) {
    std::string corners;
    for (const geometry::Point corner : outline)
      corners += (corners.empty() ? "" : ", ") + point(corner);
    return '[' + corners + ']';
  }

  static std::string point(geometry::Point place) {
    return fmt::format("[{}, {}]", in_millimetres(place.x), in_millimetres(place.y));
  }

  [[nodiscard]] Lines plain_parts() const {
    Lines lines;
    for (const PlainLine& part : variant_.plain_lines) {
      lines.push_back(
          entry(part.name, fmt::format("{{across: [{}, {}], length: {}}}", point(part.from),
                                       point(part.to), with_unit(part.length, Measure::length))));
    }
    return lines;
  }

  [[nodiscard]] Lines probes() const {
    Lines lines;
    for (const Probe& probe : variant_.probes)
      lines.push_back(entry(probe.name, point(probe.place)));
    return lines;
  }

  [[nodiscard]] Lines readings() const {
    Lines lines;
    for (const Reading& reading : variant_.readings) {
      WrittenReading written;
      written.temperature = reading.temperature;
      written.plus_or_minus = reading.plus_or_minus;
      lines.push_back(entry(reading.probe, map_of(written).text()));
    }
    return lines;
  }

  [[nodiscard]] Lines criteria() const {
    Lines lines;
    for (const Criterion& criterion : variant_.criteria) {
      WrittenCriterion written;
      if (criterion.guide.empty()) {
        std::visit([&](const auto& test) { written.test = test; }, criterion.test);
      } else {
        written.test =
            PublishedTest{criterion.guide, criterion.with_any_resistance ? WithRsi::as_computed
                                                                         : WithRsi::as_stated};
      }
      lines.push_back(entry(criterion.name, map_of(written).text()));
    }
    return lines;
  }

  [[nodiscard]] std::string climate() const {
    WrittenClimate written;
    written.source = variant_.climate->source;
    written.outside_temperature = variant_.climate->outside_temperature;
    written.outside_humidity = variant_.climate->outside_humidity;
    written.inside_temperature = variant_.climate->inside_temperature;
    written.inside_humidity = variant_.climate->inside_humidity;
    return map_of(written).text();
  }

  [[nodiscard]] YamlMap enough() const {
    WrittenEnough written;
    if (const auto& thickness = variant_.enough.thickness)
      written.thickness = {thickness->of, thickness->from, thickness->to};
    if (!variant_.enough.moisture_of.empty()) written.moisture = {variant_.enough.moisture_of};
    return map_of(written);
  }

  [[nodiscard]] std::string vapour() const {
    WrittenVapour written{variant_.vapour->conditions, variant_.vapour->days};
    return map_of(written).text();
  }

  [[nodiscard]] std::string drying() const {
    WrittenDrying written{variant_.drying->wet, variant_.drying->coats,
                          variant_.drying->inside_coats, variant_.drying->conditions};
    return map_of(written).text();
  }

  const Variant& variant_;
};

}  // namespace

std::string material_text(const Material& material) {
  WrittenMaterial values = written(material);
  return map_of(values).text();
}

std::string sheet_text(const Variant& variant) { return SheetWriter(variant).text(); }

}  // namespace quoin::cases
