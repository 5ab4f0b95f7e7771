// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "cases/meaning/frame_corners.hpp"
#include "cases/write_sheet.hpp"
#include "geometry/section.hpp"
#include "tests/cases/read_support.hpp"

using quoin::testing::head;
using quoin::testing::read;
using namespace quoin::cases;

namespace {

/// A sash 12 mm proud of a pane with two hollows, invented. `hall` and `pane`: further keys.
std::string frame_text(const std::string& hall, const std::string& pane) {
  return "quoin: 1\nspaces:\n  hall: {is: inside, temperature: 18, humidity: 62" + hall +
         "}\n"
         "  yard: {is: outside, temperature: 1}\n"
         "materials:\n"
         "  hollow: {cavity: slightly ventilated, flow: along y}\n"
         "section:\n"
         "  sheet:\n"
         "    - {fill: hall, x: [0, 300], y: [0, 100]}\n"
         "    - {fill: yard, x: [0, 300], y: [-140, -40]}\n"
         "    - {fill: softwood across the grain, part: frame, x: [0, 60], y: [-40, 12]}\n"
         "    - {fill: wood fibre board, x: [60, 300], y: [-40, 0]" +
         pane +
         "}\n"
         "    - {fill: hollow, x: [10, 20], y: [-30, 0]}\n"
         "    - {fill: hollow, x: [40, 46], y: [-30, 0]}\n";
}

const std::string asked = ", frame corners: ISO 10077-2";
const std::string glazing = ", part: glazing";

std::vector<RegionId> hollows(const Variant& variant) {
  std::vector<RegionId> found;
  for (const RegionId id : quoin::geometry::ids(variant.regions)) {
    if (variant.regions[id].material.cavity) found.push_back(id);
  }
  return found;
}

}  // namespace

TEST_CASE("each painted area of an air cavity is a region of its own, part of the frame") {
  const Variant variant = read(frame_text("", glazing)).variants[0];
  const auto found = hollows(variant);
  REQUIRE(found.size() == 2);
  for (const RegionId id : found) {
    const Region& region = variant.regions[id];
    CHECK(region.name == "hollow");
    CHECK(region.part == quoin::materials::Part::frame);
    CHECK(region.material.cavity->ventilation ==
          quoin::materials::Cavity::Ventilation::slightly_ventilated);
    CHECK(region.material.cavity->flow == quoin::materials::Cavity::Flow::along_y);
  }
  // Two areas of a plain material are one region: the negative twin.
  CHECK(variant.regions.size() == 4);
  std::string plain = frame_text("", glazing);
  plain.replace(plain.find("{cavity"), plain.find("along y}") + 8 - plain.find("{cavity"),
                "{conductivity: 0.1, density: 10}");
  CHECK(read(plain).variants[0].regions.size() == 3);
}

TEST_CASE("a cavity like another keeps its ventilation and may have another flow") {
  std::string text = frame_text("", glazing);
  text.replace(text.find("section:"), 0, "  other hollow: {like: hollow, flow: along x}\n");
  text += "    - {fill: other hollow, x: [25, 35], y: [-30, 0]}\n";
  const Variant variant = read(text).variants[0];
  const Region& other = variant.regions[hollows(variant).back()];
  CHECK(other.name == "other hollow");
  CHECK(other.material.cavity->ventilation ==
        quoin::materials::Cavity::Ventilation::slightly_ventilated);
  CHECK(other.material.cavity->flow == quoin::materials::Cavity::Flow::along_x);
}

TEST_CASE("a variant can close the slit of a cavity") {
  const Case both = read(frame_text("", glazing) +
                         "variants:\n  sealed: {materials: {hollow: {cavity: unventilated}}}\n");
  const Region& sealed = both.variants[1].regions[hollows(both.variants[1])[0]];
  CHECK(sealed.material.cavity->ventilation == quoin::materials::Cavity::Ventilation::unventilated);
  CHECK(sealed.material.cavity->flow == quoin::materials::Cavity::Flow::along_y);
}

TEST_CASE("a space that asks for it gets strips in its frame corners, of its own air") {
  const Variant variant = read(frame_text(asked, glazing)).variants[0];
  REQUIRE(variant.spaces.size() == 3);
  const Space& hall = variant.spaces[SpaceId(0)];
  const Space& strips = variant.spaces[SpaceId(2)];
  CHECK(strips_of(variant.spaces, SpaceId(0)) == SpaceId(2));
  CHECK(strips.air == SpaceId(0));
  CHECK(strips.resistance == 0.20);
  CHECK(strips.name == "hall, frame corners");
  CHECK(strips.temperature == hall.temperature);
  CHECK(strips.humidity == hall.humidity);
  CHECK_FALSE(hall.resistance);
  CHECK(variant.remarks.empty());
  const auto painted = std::count_if(
      variant.sheet.begin(), variant.sheet.end(),
      [](const auto& patch) { return patch.fill == quoin::geometry::Fill{SpaceId(2)}; });
  CHECK(painted == 2);
}

TEST_CASE("without being asked nothing is painted") {
  const Variant variant = read(frame_text("", glazing)).variants[0];
  CHECK(variant.spaces.size() == 2);
  CHECK(variant.sheet.size() == 6);
}

TEST_CASE("a space of the same air that asks for strips gets them as its own") {
  std::string text = frame_text("", glazing);
  text.replace(text.find("materials:"), 0, "  niche: {like: hall, frame corners: ISO 10077-2}\n");
  text.replace(text.find("fill: hall"), 10, "fill: niche");
  const Variant variant = read(text).variants[0];
  REQUIRE(variant.spaces.size() == 4);
  CHECK(variant.spaces[SpaceId(3)].name == "niche, frame corners");
  CHECK(variant.spaces[SpaceId(3)].air == SpaceId(0));
}

TEST_CASE("strips asked for where no frame has a corner are remarked on") {
  const Variant variant = read(frame_text(asked, "")).variants[0];  // the pane is no glazing
  CHECK(variant.spaces.size() == 2);
  REQUIRE(variant.remarks.size() == 1);
  CHECK(variant.remarks[0].text.find("no re-entrant corner") != std::string::npos);
  CHECK(variant.remarks[0].line == 3);
}

TEST_CASE("a frame with cavities and strips written as a sheet reads back to the same case") {
  const Variant variant = read(frame_text(asked, glazing)).variants[0];
  const std::string text = sheet_text(variant);
  CAPTURE(text);
  CHECK(text.find("hall, frame corners") == std::string::npos);
  const Variant back = read(text).variants[0];
  CHECK(sheet_text(back).substr(sheet_text(back).find("\nspaces")) ==
        text.substr(text.find("\nspaces")));
  CHECK(back.spaces.size() == variant.spaces.size());
  CHECK(hollows(back) == hollows(variant));
  const auto before = quoin::geometry::section_of(variant.sheet);
  const auto after = quoin::geometry::section_of(back.sheet);
  CHECK(after.x == before.x);
  CHECK(after.y == before.y);
  CHECK(after.cells == before.cells);
  for (const RegionId id : hollows(back)) {
    CHECK(back.regions[id].part == variant.regions[id].part);
    CHECK(material_text(back.regions[id].material) == material_text(variant.regions[id].material));
  }
}

TEST_CASE("how wet a cavity may be is not asked") {
  const auto faults =
      quoin::testing::faults_of(frame_text("", glazing) + "enough: {moisture: hollow}\n");
  REQUIRE(faults.size() == 1);
  CHECK(faults[0].what == "the air cavity 'hollow' holds no water");
}
