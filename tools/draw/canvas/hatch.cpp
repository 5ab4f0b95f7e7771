// SPDX-License-Identifier: Apache-2.0
#include "tools/draw/canvas/hatch.hpp"

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

/// One kind's tints, and its hatch. Tiles are drawn at 1 unit = 0.2 mm on A5.
struct Style {
  std::array<Colour, 3> tints;
  Hatch hatch;    ///< of the first material of the kind
  bool turnable;  ///< whether further materials of the kind turn the hatch
};

Stroke pen(Colour colour, double width = 0.8, Ends ends = Ends::square) {
  return {colour, width, {}, ends};
}

/// A dot of the pen.
Line dot(double x, double y) { return {{x, y}, {x + 0.01, y}}; }

/// A cubic curve by its ends and what pulls it, fine enough for a hatch.
Line curve(Point a, Point b, Point c, Point d) {
  constexpr int pieces = 10;
  Line line;
  for (int k = 0; k <= pieces; ++k) {
    const double t = static_cast<double>(k) / pieces, s = 1.0 - t;
    const double wa = s * s * s, wb = 3 * s * s * t, wc = 3 * s * t * t, wd = t * t * t;
    line.push_back(
        {wa * a.x + wb * b.x + wc * c.x + wd * d.x, wa * a.y + wb * b.y + wc * c.y + wd * d.y});
  }
  return line;
}

Style style_of(Kind kind) {
  switch (kind) {
    case Kind::masonry:
      return {{{{0xe9c9b4}, {0xdcb597}, {0xf2ddcd}}},
              {"masonry", 7, 7, -45, {{{0, 3.5}, {7, 3.5}}}, pen({0x8c5b44})},
              true};
    case Kind::coat:
      return {{{{0xf4efe4}, {0xe4dcc8}, {0xfbf9f2}}},
              {"coat",
               5,
               5,
               0,
               {dot(1, 1.2), dot(3.6, 3.4), dot(0.6, 4)},
               pen({0x6f6656}, 1.1, Ends::round)},
              true};
    case Kind::stone:
      return {
          {{{0xd9dad6}, {0xc4c8c6}, {0xe9e9e6}}},
          {"stone", 12, 7, -45, {{{0, 3.5}, {8, 3.5}}, {{10, 3.5}, {10.6, 3.5}}}, pen({0x5d6463})},
          true};
    case Kind::timber:
      return {
          {{{0xecd8ab}, {0xdcc184}, {0xf5e8c9}}},
          {"timber",
           26,
           9,
           0,
           {curve({0, 2}, {7, 0}, {13, 5}, {26, 2}), curve({0, 6.5}, {10, 8}, {17, 4}, {26, 6.5})},
           pen({0x8a6a2c})},
          true};
    case Kind::insulation:
      return {{{{0xfbf3c4}, {0xf3ead8}, {0xfdfae6}}},
              {"insulation", 12, 12, 0, {{{0, 12}, {6, 0}, {12, 12}}}, pen({0x8f8330})},
              true};
    case Kind::board:
      return {{{{0xdde7e0}, {0xcbdad2}, {0xedf3ef}}},
              {"board", 6, 6, 45, {{{0, 3}, {6, 3}}, {{3, 0}, {3, 6}}}, pen({0x5b7a69})},
              true};
    case Kind::metal:
      return {{{{0x737b86}, {0x5b636e}, {0x8d949d}}},
              {"metal", 4, 4, -45, {{{0, 2}, {4, 2}}}, pen({0xeef0f2})},
              true};
    case Kind::glass:
      return {{{{0xcfe6f1}, {0xb9d9e8}, {0xe3f1f7}}},
              {"glass", 14, 14, 0, {{{2, 9}, {7, 4}}, {{6, 11}, {12, 5}}}, pen({0x3f7890})},
              false};
    case Kind::air:
      return {{{{0xf6fafc}, {0xeaf3f8}, {0xfbfdfe}}},
              {"air", 16, 16, 0, {dot(4, 8)}, pen({0x7fa3b5})},
              false};
    case Kind::ground:
      return {{{{0xcfbfa6}, {0xbda98a}, {0xddd1bd}}},
              {"ground",
               20,
               12,
               0,
               {{{1, 6}, {5, 2}},
                {{4, 6}, {8, 2}},
                {{7, 6}, {11, 2}},
                {{11, 12}, {15, 8}},
                {{14, 12}, {18, 8}},
                {{17, 12}, {20, 9}}},
               pen({0x65543a})},
              false};
  }
  return {};
}

/// Short blue strokes like rain, the closer the wetter.
std::shared_ptr<const Hatch> wet_hatch(std::string name, double spacing) {
  const auto drop = [&](double x, double y) {
    return Line{{x * spacing, y * spacing}, {x * spacing, (y + 0.25) * spacing}};
  };
  return std::make_shared<const Hatch>(Hatch{std::move(name),
                                             spacing,
                                             spacing,
                                             0.0,
                                             {drop(0.25, 0.1), drop(0.75, 0.6)},
                                             pen({0x1f5f99}, 1.6, Ends::round)});
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
  const auto damp = wet_hatch("wet-1", 14.0), soaked = wet_hatch("wet-2", 8.0);
  std::map<Kind, int> of_kind;
  std::map<std::string, Look> of_material;  // by name, dry
  for (const geometry::RegionId id : geometry::ids(regions)) {
    const cases::Region& region = regions[id];
    auto known = of_material.find(region.material.name);
    if (known == of_material.end()) {
      const Kind kind = kind_of(region.material);
      Style style = style_of(kind);
      const int number = of_kind[kind]++;
      style.hatch.name += fmt::format("-{}", number);
      if (style.turnable) style.hatch.turn += 90.0 * (number % 2) + 30.0 * (number / 2);
      known = of_material
                  .emplace(region.material.name,
                           Look{style.tints[static_cast<std::size_t>(number) % 3],
                                std::make_shared<const Hatch>(std::move(style.hatch)), nullptr})
                  .first;
    }
    looks_[id] = known->second;
    const double full = fullness(region);
    if (full >= 0.15) looks_[id].wet = full >= 0.7 ? soaked : damp;
  }
}

void Looks::paint(Canvas& canvas, geometry::RegionId region,
                  const std::vector<Line>& outlines) const {
  const Look& look = looks_[region];
  canvas.area(outlines, {look.ground, {}});
  canvas.area(outlines, {look.hatch, {}});
  if (look.wet) canvas.area(outlines, {look.wet, {}});
}

}  // namespace quoin::tools
