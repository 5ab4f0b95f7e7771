// SPDX-License-Identifier: Apache-2.0
#include "cases/meaning/open_layers.hpp"

#include <algorithm>
#include <string>

#include "materials/conductivity.hpp"
#include "tests/cases/read_support.hpp"
#include "tests/support/within.hpp"

using quoin::testing::head;
using quoin::testing::read;
using quoin::testing::WithinAbs;
using namespace quoin::cases;

namespace {

/// A wall of two half bricks of 0.8 W/(m K) with a cavity between them.
Variant wall(const std::string& cavity, const std::string& outer = "[leaf, 100]") {
  return read(head +
              "materials:\n"
              "  leaf: {conductivity: 0.8, density: 1700}\n"
              "  foam: {conductivity: 0.035, density: 30}\n"
              "  cavity: {air layer: 50" +
              cavity + "}\nsection: {wall: {layers: [[leaf, 100], [cavity, 50], " + outer + "]}}\n")
      .variants.at(0);
}

const Region& cavity_of(const Variant& variant) {
  return *std::find_if(variant.regions.begin(), variant.regions.end(),
                       [](const Region& region) { return region.name == "cavity"; });
}

double resistance_of(const Variant& variant) {
  return 0.05 / quoin::materials::conductivity_of(cavity_of(variant).material, 0.0).value;
}

bool remarked(const Variant& variant, const std::string& words) {
  return std::any_of(variant.remarks.begin(), variant.remarks.end(), [&](const Remark& remark) {
    return remark.text.find(words) != std::string::npos;
  });
}

}  // namespace

TEST_CASE("a layer of air with few openings is still air") {
  CHECK(resistance_of(wall(", openings: 500")) == resistance_of(wall("")));
  CHECK(wall(", openings: 500").remarks.empty());
  CHECK(wall("").spaces.size() == 2);
}

TEST_CASE("a well ventilated layer is the air outside behind the resistance of still air") {
  const Variant open = wall(", openings: 1500");
  REQUIRE(open.spaces.size() == 3);
  const Space& space = open.spaces[SpaceId(2)];
  CHECK(space.name == "yard in cavity");
  CHECK(space.air == SpaceId(1));
  CHECK(space.temperature == 1.0);
  CHECK(space.resistance == 0.13);
  CHECK(std::any_of(open.sheet.begin(), open.sheet.end(), [](const auto& patch) {
    return patch.fill == quoin::geometry::Fill(SpaceId(2));
  }));
  REQUIRE(open.flanks.size() == 1);
  CHECK(open.flanks[0].layers.size() == 1);  // the outer leaf no longer counts
  CHECK(open.flanks[0].outside == SpaceId(2));
  CHECK(remarked(open, "keeps no heat in"));
  // Source: ISO 6946, from memory: as an inside surface, by the way the heat goes.
  CHECK(wall(", openings: 1500, heat goes: up").spaces[SpaceId(2)].resistance == 0.10);
  CHECK(wall(", openings: 1500, heat goes: down").spaces[SpaceId(2)].resistance == 0.17);
}

TEST_CASE("a slightly ventilated layer resists so much that the whole wall lies between the two") {
  // Source: ISO 6946, from memory: R = (1500 - A) / 1000 R(still) + (A - 500) / 1000 R(open). With
  // a wind of 4 m/s outside 0.0406 m2K/W by its formula.
  const double outer =
      0.1 / 0.8 + 1 / (4.0 + 4.0 * 4.0 + 0.9 * 4 * 5.67e-8 * 273.15 * 273.15 * 273.15);
  const double still = resistance_of(wall("")) + outer;
  for (const double openings : {501.0, 1000.0, 1250.0}) {
    CAPTURE(openings);
    const double expected =
        (1500 - openings) / 1000 * still + (openings - 500) / 1000 * 0.13 - outer;
    const Variant slight = wall(", openings: " + std::to_string(openings));
    CHECK(resistance_of(slight) == WithinAbs{expected, 1e-6});
    CHECK(remarked(slight, "slightly ventilated"));
    CHECK(slight.spaces.size() == 2);
  }
}

TEST_CASE("a stated resistance of a layer stands in place of that of its thickness") {
  CHECK(resistance_of(wall(", layer resistance: 0.45")) == WithinAbs{0.45, 1e-12});
  CHECK(resistance_of(wall("")) == WithinAbs{0.18, 0.006});
}

TEST_CASE("on a sheet a well ventilated layer is open, too") {
  const Variant sheet = read(head + R"(materials:
  cavity: {air layer: 50, openings: 2000}
section:
  sheet:
    - {fill: hall, x: [-100, 0], y: [0, 1000]}
    - {fill: common brick, x: [0, 100], y: [0, 1000]}
    - {fill: cavity, x: [100, 150], y: [0, 1000]}
    - {fill: common brick, x: [150, 250], y: [0, 1000]}
    - {fill: yard, x: [250, 350], y: [0, 1000]}
)")
                            .variants.at(0);
  CHECK(sheet.spaces.size() == 3);
  CHECK(sheet.sheet[2].fill == quoin::geometry::Fill(SpaceId(2)));
}
