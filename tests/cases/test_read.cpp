// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <fmt/format.h>

#include <string>
#include <variant>

#include "cases/text/sha256.hpp"
#include "geometry/section.hpp"
#include "tests/cases/read_support.hpp"
#include "tests/support/within.hpp"

using quoin::testing::faults_of;
using quoin::testing::head;
using quoin::testing::read;
using quoin::testing::WithinAbs;
using namespace quoin::cases;

namespace {

// The example of the format's description, its recipe filled in.
const std::string gauge_house = R"(quoin: 1                        # version of this format
title: Gauge house, north-east corner
cut: horizontal                 # plan cut (default) or vertical: decides up/down surfaces

spaces:                         # the air on each side
  hall:  {is: inside,  temperature: 18, humidity: 62}
  yard:  {is: outside, temperature: 1,  humidity: 90, wind: 4}

materials:                      # own ones; all others by name from the catalogue
  wall brick: {like: common brick, moisture: 0.15 m3/m3}
  soft limestone: {conductivity: 1.1, density: 1800}

section:                        # either a recipe ...
  corner:
    layers:
      - {material: lime plaster, thickness: 15}
      - {material: wall brick, thickness: 330}
# section:                      # ... or a sheet: painted areas, later ones cover earlier ones
#   sheet:
#     - {fill: wall brick, x: [0, 330], y: [0, 1330]}
#     - {fill: yard,       outline: [[-100, -100], [0, -100], [0, 1330], [-100, 1330]]}

probes:                         # where a thermocouple was, or where you want to know
  A: [345, 345]

readings:                       # measured on site (optional)
  A: {temperature: 8.6, plus or minus: 0.5}

criteria:                       # what counts as a risk
  mould: {surface humidity: 80}          # default
  fRsi: 0.75

accuracy: {fRsi: 0.002, L2D: 0.1 %}      # the default

variants:                       # each is the case above with some keys replaced
  saturated brick: {materials: {wall brick: {moisture: 0.25 m3/m3}}}
  dried out:       {materials: {wall brick: {moisture: 0.01 m3/m3}}}
)";

const Region& region_named(const Variant& variant, const std::string& name) {
  for (const Region& region : variant.regions) {
    if (region.name == name) return region;
  }
  FAIL(name);
  return *variant.regions.begin();
}

}  // namespace

TEST_CASE("the example of the format reads as written") {
  const Case gauge = read(gauge_house);
  CHECK(gauge.title == "Gauge house, north-east corner");
  CHECK(gauge.sha256 == sha256(gauge_house));
  REQUIRE(gauge.variants.size() == 3);
  const Variant& found = gauge.variants[0];
  CHECK(found.name == "as found");
  CHECK(found.cut == Cut::horizontal);

  REQUIRE(found.spaces.size() == 2);
  const Space& hall = found.spaces[SpaceId(0)];
  CHECK(hall.name == "hall");
  CHECK(hall.is == SpaceKind::inside);
  CHECK(hall.temperature == 18.0);
  CHECK(hall.humidity == 0.62);
  CHECK_FALSE(hall.resistance);
  CHECK(hall.air == SpaceId(0));
  CHECK(found.spaces[SpaceId(1)].is == SpaceKind::outside);
  CHECK(found.spaces[SpaceId(1)].wind == 4.0);

  const Region& brick = region_named(found, "wall brick");
  CHECK(brick.moisture == 0.15);
  CHECK(brick.state == "0.15 m3/m3");
  CHECK(brick.material.name == "wall brick");
  CHECK(region_named(found, "lime plaster").moisture == 0.0);
  CHECK(region_named(found, "lime plaster").state.empty());

  REQUIRE(found.recipe);
  const auto& corner = std::get<quoin::geometry::Corner>(*found.recipe);
  REQUIRE(corner.layers.size() == 2);
  CHECK(corner.layers[1].thickness == 0.33);
  CHECK(corner.inside == SpaceId(0));
  CHECK(corner.outside == SpaceId(1));
  // A sum of two lengths: one rounding.
  CHECK(found.thickness == quoin::testing::WithinRel{0.345, 1e-15});
  CHECK_FALSE(found.flanks.empty());
  CHECK_FALSE(found.sheet.empty());

  REQUIRE(found.probes.size() == 1);
  CHECK(found.probes[0].place == quoin::geometry::Point{0.345, 0.345});
  REQUIRE(found.readings.size() == 1);
  CHECK(found.readings[0].temperature == 8.6);
  CHECK(found.readings[0].plus_or_minus == 0.5);
  REQUIRE(found.criteria.size() == 2);
  CHECK(std::get<SurfaceHumidityLimit>(found.criteria[0].test).limit == 0.8);
  CHECK(found.criteria[1].name == "fRsi");
  CHECK(std::get<FactorThreshold>(found.criteria[1].test).threshold == 0.75);
  CHECK(found.accuracy.factor == 0.002);
  CHECK(found.accuracy.coupling == 0.001);
  CHECK(found.remarks.empty());

  CHECK(gauge.variants[1].name == "saturated brick");
  CHECK(region_named(gauge.variants[1], "wall brick").moisture == 0.25);
  CHECK(region_named(gauge.variants[2], "wall brick").moisture == 0.01);
}

TEST_CASE("an own material is the catalogue's with the given values replaced") {
  const Case plain = read(head + "section: {wall: {layers: [[common brick, 330]]}}\n");
  const Case own = read(head +
                        "materials: {mine: {like: common brick, density: 1700}}\n"
                        "section: {wall: {layers: [[mine, 330]]}}\n");
  const auto& original = region_named(plain.variants[0], "common brick").material;
  const auto& changed = region_named(own.variants[0], "mine").material;
  CHECK(changed.density.value == 1700.0);
  CHECK(changed.density.confidence == quoin::materials::Confidence::stated);
  CHECK(changed.conductivity.value == original.conductivity.value);
  CHECK(changed.law.index() == original.law.index());
  CHECK(changed.saturation->value == original.saturation->value);
}

TEST_CASE("an own material may be like another own one, moisture included") {
  const Case own = read(head +
                        "materials:\n"
                        "  wall brick: {like: common brick, density: 1700, moisture: exposed}\n"
                        "  wet brick: {like: wall brick, moisture: damp}\n"
                        "  same brick: {like: wall brick}\n"
                        "section: {wall: {layers: [[wet brick, 110], [same brick, 220]]}}\n");
  CHECK(region_named(own.variants[0], "wet brick").material.density.value == 1700.0);
  CHECK(region_named(own.variants[0], "wet brick").state == "damp");
  CHECK(region_named(own.variants[0], "same brick").state == "exposed");
}

TEST_CASE("a part of which all is commented out counts as not given") {
  const Case plain = read(head +
                          "section: {wall: {layers: [[common brick, 330]]}}\n"
                          "materials:\nprobes:\nreadings:\ncriteria:\naccuracy:\nvariants:\n");
  CHECK(plain.variants.size() == 1);
  CHECK(plain.variants[0].criteria.size() == 1);
}

TEST_CASE("an own material can be told in full, with sources") {
  const Case own = read(head + R"(materials:
  mine:
    conductivity: {value: 0.7, low: 0.6, high: 0.8, source: report 7, confidence: published}
    density: 1700
    saturation: 0.25 m3/m3
    moisture at 80 %: 0.01 m3/m3
    vapour resistance: {dry: 12, wet: {value: infinite}}
    law: {exponential: {per volume: 8, trusted to: 6 vol-%}}
    law source: report 7
    part: frame
    moisture: at 80 %
section: {wall: {layers: [[mine, 330]]}}
)");
  const Region& region = region_named(own.variants[0], "mine");
  CHECK(region.material.conductivity.value == 0.7);
  CHECK(region.material.conductivity.low == 0.6);
  CHECK(region.material.conductivity.source == "report 7");
  CHECK(region.material.vapour_resistance_dry->value == 12.0);
  CHECK(std::isinf(region.material.vapour_resistance_wet->value));
  const auto& law = std::get<quoin::materials::Exponential>(region.material.law);
  CHECK(law.per_volume == 8.0);
  CHECK(law.limit == 0.06);
  CHECK(region.part == quoin::materials::Part::frame);
  CHECK(region.moisture == 0.01);
  CHECK(region.state == "at 80 %");
}

TEST_CASE("there is one region for each material, moisture and use, however it is written") {
  const Case sheet = read(head + R"(section:
  sheet:
    - {fill: common brick, x: [0, 330], y: [0, 1000]}
    - {fill: common brick, x: [0, 330], y: [1000, 2000], moisture: dry}
    - {fill: common brick, x: [0, 330], y: [2000, 3000], moisture: 0.1 m3/m3}
    - {fill: common brick, x: [0, 330], y: [3000, 4000], moisture: 100 kg/m3}
    - {fill: common brick, x: [0, 330], y: [4000, 5000], part: frame}
    - {fill: hall, x: [330, 430], y: [0, 5000]}
    - {fill: yard, x: [-100, 0], y: [0, 5000]}
)");
  CHECK(sheet.variants[0].regions.size() == 3);
  CHECK_FALSE(sheet.variants[0].recipe);
}

TEST_CASE("an outline paints the same as the rectangle it goes around") {
  const std::string rest =
      "    - {fill: hall, x: [330, 430], y: [0, 1000]}\n"
      "    - {fill: yard, x: [-100, 0], y: [0, 1000]}\n";
  const auto section = [&](const std::string& patch) {
    const Case text = read(head + "section:\n  sheet:\n    - " + patch + "\n" + rest);
    return quoin::geometry::section_of(text.variants[0].sheet);
  };
  const auto by_sides = section("{fill: common brick, x: [0, 330], y: [0, 1000]}");
  for (const char* outline :
       {"[[0, 0], [330, 0], [330, 1000], [0, 1000]]", "[[0, 1000], [330, 1000], [330, 0], [0, 0]]",
        "[[0, 0], [330, 0], [330, 1000], [0, 1000], [0, 0]]",
        "[[0, 0], [165, 0], [330, 0], [330, 1 m], [0, 1 m]]"}) {
    CAPTURE(outline);
    const auto by_corners = section(fmt::format("{{fill: common brick, outline: {}}}", outline));
    CHECK(by_corners.cells == by_sides.cells);
    CHECK(by_corners.x == by_sides.x);
    CHECK(by_corners.y == by_sides.y);
  }
}

TEST_CASE("a coordinate below one millimetre is read beside lengths in millimetres alone") {
  const auto outline = [&](const std::string& corners) {
    return head + "section:\n  sheet:\n    - {fill: common brick, outline: " + corners +
           "}\n    - {fill: hall, x: [330, 430], y: [0, 1000]}\n"
           "    - {fill: yard, x: [-100, 0], y: [0, 1000]}\n";
  };
  const Case turned = read(outline("[[0, 0], [330, 0.25], [330, 1000], [0, 1000]]"));
  CHECK(turned.variants[0].sheet.front().outline[1].y == WithinAbs{0.00025, 1e-12});
  CHECK_FALSE(faults_of(outline("[[0.1, 0], [0.33, 0], [0.33, 1], [0, 1]]")).empty());
}

TEST_CASE("a band wets one material inside its rectangle and nothing else") {
  const Case damp = read(head + R"(section:
  wall: {layers: [[lime plaster, 15], [common brick, 330]], height: 1000}
  bands:
    - {of: common brick, y: [0, 300], moisture: damp}
    - {of: common brick, x: [300, 345], moisture: 0.2 m3/m3}
)");
  const Variant& variant = damp.variants[0];
  const auto section = quoin::geometry::section_of(variant.sheet);
  const auto moisture_at = [&](double x, double y) {
    for (std::size_t j = 0; j < section.rows(); ++j) {
      for (std::size_t i = 0; i < section.columns(); ++i) {
        if (section.x[i] < x && x < section.x[i + 1] && section.y[j] < y && y < section.y[j + 1])
          return variant.regions[std::get<RegionId>(section.cell(i, j).below)].moisture;
      }
    }
    return -1.0;
  };
  const double damp_brick = 0.4 * region_named(variant, "common brick").material.saturation->value;
  CHECK(moisture_at(0.1, 0.1) == damp_brick);
  CHECK(moisture_at(0.1, 0.5) == 0.0);
  CHECK(moisture_at(0.01, 0.1) == 0.0);  // the plaster
  CHECK(moisture_at(0.32, 0.1) == 0.2);  // the second band covers the first
  CHECK(moisture_at(0.32, 0.9) == 0.2);
}

TEST_CASE("a band that lies beside its material is refused, one that reaches into it is read") {
  const auto faults_of_band = [](const std::string& band) {
    return faults_of(head +
                     "section:\n  wall: {layers: [[lime plaster, 15], [common brick, 330]]}\n" +
                     "  bands: [{of: common brick, moisture: saturated, " + band + "}]\n");
  };
  const auto above = faults_of_band("y: [2000, 3000]");
  REQUIRE(above.size() == 1);
  CHECK(above[0].expected.find("x within [15, 345], y within [0, 1000]") != std::string::npos);
  CHECK(faults_of_band("y: [1000, 1100]").size() == 1);  // it only touches
  CHECK(faults_of_band("x: [0, 15]").size() == 1);       // the plaster
  CHECK(faults_of_band("y: [900, 3000]").empty());
  CHECK(faults_of_band("x: [0, 16]").empty());
}

TEST_CASE(
    "variants replace, add and remove keys, and an empty first one names the case as written") {
  const Case text = read(head + R"(section: {wall: {layers: [[common brick, 330]]}}
criteria: {fRsi: 0.7}
variants:
  winter: ~
  mild: {spaces: {yard: {temperature: 8}}}
  still air: {spaces: {yard: {wind: ~}}}
  vertical: {cut: vertical, criteria: {mould: {surface humidity: 75}}}
  corner: {section: {wall: ~, corner: {layers: [[common brick, 330]]}}}
)");
  REQUIRE(text.variants.size() == 5);
  CHECK(text.variants[0].name == "winter");
  CHECK(text.variants[1].spaces[SpaceId(1)].temperature == 8.0);
  CHECK(text.variants[1].spaces[SpaceId(1)].wind == 4.0);
  CHECK_FALSE(text.variants[2].spaces[SpaceId(1)].wind);
  CHECK(text.variants[2].spaces[SpaceId(1)].temperature == 1.0);
  CHECK(text.variants[3].cut == Cut::vertical);
  CHECK(text.variants[3].criteria.size() == 2);
  CHECK(text.variants[0].criteria.size() == 1);
  CHECK(std::holds_alternative<quoin::geometry::Corner>(*text.variants[4].recipe));
}

TEST_CASE("without criteria mould is judged where a humidity is known") {
  const std::string wall = "section: {wall: {layers: [[common brick, 330]]}}\n";
  const Case humid = read(head + wall);
  REQUIRE(humid.variants[0].criteria.size() == 1);
  CHECK(humid.variants[0].criteria[0].name == "mould");
  const Case unknown = read(
      "quoin: 1\nspaces: {a: {is: inside, temperature: 20}, b: {is: outside, temperature: 0}}\n" +
      wall);
  CHECK(unknown.variants[0].criteria.empty());
}

TEST_CASE("names keep the author's spelling, whatever the script") {
  const Case text = read(
      "quoin: 1\ntitle: Küche\n"
      "spaces: {Küche: {is: inside, temperature: 20}, \"двор: север\": {is: outside, temperature: "
      "0}}\n"
      "materials: {土壁: {like: cob}}\n"
      "section: {wall: {layers: [[土壁, 330]]}}\n");
  CHECK(text.title == "Küche");
  CHECK(text.variants[0].spaces[SpaceId(1)].name == "двор: север");
  CHECK(text.variants[0].regions[RegionId(0)].name == "土壁");
}

TEST_CASE("all faults of a file come at once, in the order of the file") {
  const auto faults = faults_of(R"(quoin: 1
spaces:
  hall: {is: inside, temperature: 18, humidity: 0.62}
  yard: {is: outdoor, temperature: 1}
materials:
  wall brick: {like: comon brick}
section:
  corner: {layers: [{material: wall brick, thickness: 330}], leg: 365 m}
probs: {}
accuracy: {fRsi: 2}
variants:
  wet: {materials: {wall brick: {moisture: 8 %}}}
)");
  REQUIRE(faults.size() == 7);
  const std::size_t lines[] = {3, 4, 6, 8, 9, 10, 12};
  for (std::size_t i = 0; i < faults.size(); ++i) {
    CAPTURE(text_of(faults[i]));
    CHECK(faults[i].line == lines[i]);
    CHECK_FALSE(faults[i].source.empty());
    CHECK_FALSE(faults[i].expected.empty());
  }
  CHECK(faults[6].what.find("in the variant 'wet': ") == 0);
}

TEST_CASE("what is allowed but doubtful is remarked on with its line") {
  const auto remarks = [](const std::string& text) { return read(text).variants[0].remarks; };
  const std::string wall = "section: {wall: {layers: [[common brick, 330]]}}\n";
  const std::string near =
      "quoin: 1\nspaces:\n  a: {is: inside, temperature: 20}\n  b: {is: outside, temperature: "
      "17}\n" +
      wall + "probes: {A: [0, 500]}\n";
  CHECK(remarks(near).empty());
  const auto measured = remarks(near + "readings: {A: {temperature: 19}}\n");
  REQUIRE(measured.size() == 1);
  CHECK(measured[0].line == 7);
  CHECK(measured[0].text.find("differ by only 3 K") != std::string::npos);
  const auto hot = remarks(
      "quoin: 1\nspaces:\n  a: {is: inside, temperature: 68}\n  b: {is: outside, temperature: "
      "34}\n" +
      wall);
  REQUIRE(hot.size() == 1);
  CHECK(hot[0].text.find("°F") != std::string::npos);
  const auto dry = remarks(head + "  bath: {is: inside, temperature: 22}\n" +
                           "section: {partition: {layers: [[common brick, 330]], partition: "
                           "[[common brick, 110]], inside: hall, beyond: bath}}\n");
  REQUIRE(dry.size() == 1);
  CHECK(dry[0].line == 5);
  CHECK(dry[0].text.find("'bath' has no humidity") != std::string::npos);
  CHECK(remarks(head + wall).empty());
}

TEST_CASE("a gap enclosed by material is remarked on") {
  const Case gap = read(head + R"(section:
  sheet:
    - {fill: common brick, x: [0, 330], y: [0, 1000]}
    - {fill: hall, x: [330, 430], y: [0, 1000]}
    - {fill: yard, x: [-100, 0], y: [0, 1000]}
    - {fill: nothing, x: [100, 200], y: [400, 500]}
)");
  REQUIRE(gap.variants[0].remarks.size() == 1);
  CHECK(gap.variants[0].remarks[0].text.find("enclosed") != std::string::npos);
}

TEST_CASE("two hundred painted areas read") {
  std::string text = head + "section:\n  sheet:\n";
  for (int i = 0; i < 200; ++i) {
    text += fmt::format("    - {{fill: {}, x: [{}, {}], y: [{}, {}]}}\n",
                        (i + i / 10) % 2 == 0 ? "common brick" : "lime mortar", 30 * (i % 10),
                        30 * (i % 10) + 30, 50 * (i / 10), 50 * (i / 10) + 50);
  }
  text += "    - {fill: hall, x: [300, 400], y: [0, 1000]}\n";
  text += "    - {fill: yard, x: [-100, 0], y: [0, 1000]}\n";
  const Case many = read(text);
  CHECK(many.variants[0].sheet.size() == 202);
  CHECK(quoin::geometry::section_of(many.variants[0].sheet).rows() == 20);
}

TEST_CASE("an empty variant after another is refused under its own name") {
  const auto faults = quoin::testing::faults_of(
      quoin::testing::head +
      "section: {wall: {layers: [{material: common brick, thickness: 330}]}}\n"
      "variants:\n"
      "  warmer: {spaces: {hall: {temperature: 20}}}\n"
      "  again:\n");
  REQUIRE(faults.size() == 1);
  CHECK(faults.front().what == "the variant 'again' replaces nothing");
}

TEST_CASE("a damp course too near the ground outside, or below it, is remarked on") {
  const auto remark_of = [](const std::string& levels) {
    const auto remarks = read(head +
                              "section:\n  wall base: {layers: [[common brick, 225]], "
                              "foundation: [[common brick, 225]], footing: granite, "
                              "ground: clay soil, " +
                              levels + "}\n")
                             .variants[0]
                             .remarks;
    return remarks.empty() ? std::string() : remarks.front().text;
  };
  CHECK(remark_of("ground level: -150, damp course height: 0").empty());
  CHECK(remark_of("ground level: -150").empty());
  CHECK(remark_of("ground level: -100, damp course height: 0").find("100 mm above the ground") !=
        std::string::npos);
  CHECK(remark_of("ground level: 250, damp course height: 0").find("stands 250 mm above") !=
        std::string::npos);
}
