// SPDX-License-Identifier: Apache-2.0
#include "tools/svg_hatch.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <map>

namespace quoin::tools {
namespace {

bool says(std::string_view name, std::initializer_list<std::string_view> words) {
  return std::any_of(words.begin(), words.end(), [&](std::string_view word) {
    return name.find(word) != std::string_view::npos;
  });
}

/// One kind's tints, and its hatch as strokes on a tile. Tiles are drawn at 1 unit = 0.2 mm on A5.
struct Style {
  std::string_view name;
  std::array<std::string_view, 3> tints;
  std::string_view ink;
  double width, height;  ///< of the tile
  std::string_view strokes;
  double turn;    ///< of the first material of the kind, degrees
  bool turnable;  ///< whether further materials of the kind turn the hatch
};

Style style_of(Kind kind) {
  switch (kind) {
    case Kind::masonry:
      return {"masonry", {"#e9c9b4", "#dcb597", "#f2ddcd"}, "#8c5b44", 7, 7, "M0 3.5H7", -45, true};
    case Kind::coat:
      return {"coat", {"#f4efe4", "#e4dcc8", "#fbf9f2"}, "#6f6656", 5,
              5,      "M1 1.2h.01M3.6 3.4h.01M.6 4h.01", 0,         true};
    case Kind::stone:
      return {
          "stone", {"#d9dad6", "#c4c8c6", "#e9e9e6"}, "#5d6463", 12, 7, "M0 3.5H8M10 3.5h.6", -45,
          true};
    case Kind::timber:
      return {"timber", {"#ecd8ab", "#dcc184", "#f5e8c9"},           "#8a6a2c", 26,
              9,        "M0 2C7 0 13 5 26 2M0 6.5C10 8 17 4 26 6.5", 0,         true};
    case Kind::insulation:
      return {
          "insulation", {"#fbf3c4", "#f3ead8", "#fdfae6"}, "#8f8330", 12, 12, "M0 12L6 0L12 12", 0,
          true};
    case Kind::board:
      return {"board", {"#dde7e0", "#cbdad2", "#edf3ef"}, "#5b7a69", 6, 6, "M0 3H6M3 0V6", 45,
              true};
    case Kind::metal:
      return {"metal", {"#737b86", "#5b636e", "#8d949d"}, "#eef0f2", 4, 4, "M0 2H4", -45, true};
    case Kind::glass:
      return {
          "glass", {"#cfe6f1", "#b9d9e8", "#e3f1f7"}, "#3f7890", 14, 14, "M2 9L7 4M6 11L12 5", 0,
          false};
    case Kind::air:
      return {"air", {"#f6fafc", "#eaf3f8", "#fbfdfe"}, "#7fa3b5", 16, 16, "M4 8h.01", 0, false};
    case Kind::ground:
      return {"ground",  {"#cfbfa6", "#bda98a", "#ddd1bd"},
              "#65543a", 20,
              12,        "M1 6l4 -4M4 6l4 -4M7 6l4 -4M11 12l4 -4M14 12l4 -4M17 12l3 -3",
              0,         false};
  }
  return {};
}

std::string pattern(const Style& style, std::string_view id, double turn) {
  return fmt::format(
      "<pattern id=\"{}\" patternUnits=\"userSpaceOnUse\" width=\"{}\" height=\"{}\" "
      "patternTransform=\"rotate({})\"><path d=\"{}\" fill=\"none\" stroke=\"{}\" "
      "stroke-width=\"{}\" stroke-linecap=\"{}\"/></pattern>\n",
      id, number(style.width), number(style.height), number(turn), style.strokes, style.ink,
      style.name == "coat" ? "1.1" : "0.8", style.name == "coat" ? "round" : "square");
}

/// Short blue strokes like rain, the closer the wetter.
std::string wet_pattern(std::string_view id, double spacing) {
  return fmt::format(
      "<pattern id=\"{0}\" patternUnits=\"userSpaceOnUse\" width=\"{1}\" height=\"{1}\">"
      "<path d=\"M{2} {3}v{4}M{5} {6}v{4}\" stroke=\"#1f5f99\" stroke-width=\"1.6\" "
      "stroke-linecap=\"round\"/></pattern>\n",
      id, number(spacing), number(spacing * 0.25), number(spacing * 0.1), number(spacing * 0.25),
      number(spacing * 0.75), number(spacing * 0.6));
}

/// How full of water a region is, 0 dry to 1 saturated.
double fullness(const cases::Region& region) {
  constexpr double usual_saturation = 0.3;  // of old masonry, m3/m3: common practice, no source
  const double saturation =
      region.material.saturation ? region.material.saturation->value : usual_saturation;
  return saturation > 0.0 ? region.moisture / saturation : 0.0;
}

}  // namespace

Kind kind_of(const materials::Material& material) {
  const std::string_view name = material.name;
  const double conductivity = material.conductivity.value, density = material.density.value;
  if (material.cavity) return Kind::air;
  if (conductivity >= 10.0) return Kind::metal;
  if (material.part == materials::Part::glazing) return Kind::glass;
  if (conductivity < 0.08) return Kind::insulation;
  if (says(name, {"glass", "pane"})) return Kind::glass;
  if (says(name, {"plaster", "mortar", "render", "screed"})) return Kind::coat;
  if (says(name, {"soil", "ground", "gravel", "sand"}) && !says(name, {"stone"})) {
    return Kind::ground;
  }
  if (says(name, {"timber", "oak", "wood", "pine", "spruce"}) && density < 1000.0) {
    return Kind::timber;
  }
  if (density < 1000.0 && conductivity < 0.3) return Kind::board;
  if (density >= 2000.0 || says(name, {"stone", "concrete"})) return Kind::stone;
  return Kind::masonry;
}

Looks::Looks(const geometry::Per<geometry::RegionId, cases::Region>& regions)
    : looks_(regions.size()) {
  std::map<Kind, int> of_kind;
  std::map<std::string, std::pair<std::string, std::string>> of_material;  // name -> ground, hatch
  for (const geometry::RegionId id : geometry::ids(regions)) {
    const cases::Region& region = regions[id];
    auto known = of_material.find(region.material.name);
    if (known == of_material.end()) {
      const Style style = style_of(kind_of(region.material));
      const int number_of_kind = of_kind[kind_of(region.material)]++;
      const std::string hatch = fmt::format("{}-{}", style.name, number_of_kind);
      const double turn =
          style.turn +
          (style.turnable ? 90.0 * (number_of_kind % 2) + 30.0 * (number_of_kind / 2) : 0.0);
      patterns_ += pattern(style, hatch, turn);
      const std::string_view tint = style.tints[static_cast<std::size_t>(number_of_kind) % 3];
      known = of_material.emplace(region.material.name, std::pair(std::string(tint), hatch)).first;
    }
    const double full = fullness(region);
    looks_[id] = {known->second.first, known->second.second,
                  full >= 0.7    ? "wet-2"
                  : full >= 0.15 ? "wet-1"
                                 : ""};
  }
  patterns_ += wet_pattern("wet-1", 14.0) + wet_pattern("wet-2", 8.0);
}

void Looks::paint(Canvas& canvas, geometry::RegionId region,
                  const std::vector<Line>& outlines) const {
  const Look& look = looks_[region];
  canvas.area(outlines, fmt::format("fill=\"{}\"", look.ground));
  canvas.area(outlines, fmt::format("fill=\"url(#{})\"", look.hatch));
  if (!look.wet.empty()) canvas.area(outlines, fmt::format("fill=\"url(#{})\"", look.wet));
}

}  // namespace quoin::tools
