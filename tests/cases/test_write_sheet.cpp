// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <map>
#include <sstream>
#include <string>
#include <vector>

#include "cases/meaning/catalogue.hpp"
#include "cases/meaning/shelf.hpp"
#include "cases/schema.hpp"
#include "cases/starting_case.hpp"
#include "cases/write_sheet.hpp"
#include "geometry/section.hpp"
#include "tests/cases/read_support.hpp"

using quoin::testing::head;
using quoin::testing::read;
using namespace quoin::cases;

namespace {

/// Checks that a variant and what its sheet reads back to are the same section, material by
/// material and space by space.
void check_round_trip(const Variant& variant) {
  const std::string text = sheet_text(variant);
  CAPTURE(text);
  const Variant back = read(text).variants.at(0);
  CHECK_FALSE(back.recipe);
  CHECK(back.cut == variant.cut);
  CHECK(sheet_text(back).substr(sheet_text(back).find("\nsection")) ==
        text.substr(text.find("\nsection")));

  REQUIRE(back.spaces.size() == variant.spaces.size());
  for (const SpaceId id : quoin::geometry::ids(variant.spaces)) {
    CHECK(back.spaces[id].name == variant.spaces[id].name);
    CHECK(back.spaces[id].is == variant.spaces[id].is);
    CHECK(back.spaces[id].temperature == variant.spaces[id].temperature);
    CHECK(back.spaces[id].humidity == variant.spaces[id].humidity);
    CHECK(back.spaces[id].wind == variant.spaces[id].wind);
    CHECK(back.spaces[id].resistance == variant.spaces[id].resistance);
    CHECK(back.spaces[id].air == variant.spaces[id].air);
  }

  const auto before = quoin::geometry::section_of(variant.sheet);
  const auto after = quoin::geometry::section_of(back.sheet);
  CHECK(after.x == before.x);
  CHECK(after.y == before.y);
  REQUIRE(after.cells.size() == before.cells.size());
  for (std::size_t i = 0; i < before.cells.size(); ++i) {
    const auto& a = before.cells[i].below;
    const auto& b = after.cells[i].below;
    REQUIRE(a.index() == b.index());
    if (const auto* region = std::get_if<RegionId>(&a)) {
      const Region& was = variant.regions[*region];
      const Region& is = back.regions[std::get<RegionId>(b)];
      CHECK(is.name == was.name);
      CHECK(is.moisture == was.moisture);
      CHECK(is.part == was.part);
      CHECK(material_text(is.material) == material_text(was.material));
    } else {
      CHECK(a == b);
    }
  }
  CHECK(back.probes.size() == variant.probes.size());
  CHECK(back.readings.size() == variant.readings.size());
  CHECK(back.criteria.size() == variant.criteria.size());
  CHECK(back.accuracy.coupling == variant.accuracy.coupling);
}

}  // namespace

TEST_CASE("a recipe written as a sheet reads back to the same section") {
  for (const char* recipe :
       {"wall: {layers: [[lime plaster, 15], [common brick, 327, damp]]}",
        "corner: {layers: [[lime plaster, 15], [common brick, 330]]}",
        "corner: {layers: [[lime plaster, 15], [common brick, 330]], turn: internal, leg: 1.2 m}",
        "reveal: {layers: [[lime plaster, 15], [common brick, 327]], frame: oak across the grain, "
        "lining: [[wood fibre board, 20]], frame setback: 60}",
        "reveal: {layers: [[lime plaster, 15], [common brick, 327]], frame: oak across the grain, "
        "splay: 80, rebate: 40, sub-frame: steel, sub-frame width: 25, sub-frame setback: 90}",
        "head: {layers: [[lime plaster, 15], [common brick, 327]], frame: oak across the grain, "
        "lining: [[lime plaster, 15]], lintel: steel, lintel setback: 120, splay: 80, rebate: 40, "
        "outer lintel: slate, sub-frame: softwood across the grain}",
        // The lining ends where the ground begins, but for rounding.
        "reveal: {layers: [[lime plaster, 15], [common brick, 327]], frame: oak across the grain, "
        "lining: [[lime plaster, 15]], frame depth: 120, frame width: 150, frame setback: 105, "
        "splay: 60, rebate: 90, sub-frame: oak across the grain, sub-frame width: 25, "
        "sub-frame depth: 65, sub-frame setback: 160}",
        "sill: {layers: [[lime plaster, 15], [common brick, 327]], frame: oak across the grain, "
        "board: [[slate, 20]], sill: slate, splay: 80, sub-frame: softwood across the grain}"}) {
    CAPTURE(recipe);
    check_round_trip(read(head + "section: {" + recipe + "}\n").variants[0]);
  }
}

/// What is seen in each cell of a section, by name, with its column and row. Where slopes cross,
/// lines may differ by rounding; a space that nothing touches is not written.
std::vector<std::string> seen(const Variant& variant) {
  const auto section = quoin::geometry::section_of(variant.sheet);
  std::vector<std::string> names;
  for (std::size_t k = 0; k < section.cells.size(); ++k) {
    for (const auto& fill : {section.cells[k].below, section.cells[k].above}) {
      std::string name = std::to_string(k % section.columns()) + " ";
      if (const auto* region = std::get_if<RegionId>(&fill))
        name += variant.regions[*region].name + " " + variant.regions[*region].state;
      if (const auto* space = std::get_if<SpaceId>(&fill)) name += variant.spaces[*space].name;
      names.push_back(name);
    }
  }
  return names;
}

TEST_CASE("every variant of every example survives being written as a sheet") {
  const std::filesystem::path folder =
      std::filesystem::path(QUOIN_SOURCE_DIR) / "cases" / "examples";
  std::size_t variants = 0;
  for (const auto& entry : std::filesystem::directory_iterator(folder)) {
    if (entry.path().extension() != ".yaml") continue;
    CAPTURE(entry.path().filename().string());
    std::ifstream stream(entry.path(), std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(stream), {}};
    for (const Variant& variant : read(text).variants) {
      CAPTURE(variant.name);
      const std::string written = sheet_text(variant);
      CAPTURE(written);
      CHECK(seen(read(written).variants.at(0)) == seen(variant));
      ++variants;
    }
  }
  CHECK(variants > 40);
}

TEST_CASE("layers open to outdoors and the void under a floor survive being written as a sheet") {
  const std::string leaves = "[common brick, 102], [cavity, 50], [common brick, 102]";
  for (const char* cavity : {"openings: 400", "openings: 900", "openings: 1500",
                             "layer resistance: 0.4", "openings: 1500, heat goes: up"}) {
    CAPTURE(cavity);
    for (const std::string& recipe :
         {"wall: {layers: [" + leaves + "]}",
          "reveal: {layers: [" + leaves + "], frame: oak across the grain, closer: slate}"}) {
      check_round_trip(read(head + "materials: {cavity: {air layer: 50, " + cavity +
                            "}}\nsection: {" + recipe + "}\n")
                           .variants[0]);
    }
  }
  const Variant base =
      read(head +
           "  void: {is: unheated, air bricks: {openings: 2000, shelter: exposed}}\n"
           "section:\n  wall base: {layers: [[common brick, 225]], foundation: [[common brick, "
           "225]], footing: limestone rubble, ground: clay soil, void: void, floor: [[softwood "
           "across the grain, 22]]}\n")
          .variants[0];
  check_round_trip(base);
  const Variant back = read(sheet_text(base)).variants[0];
  CHECK(back.spaces[SpaceId(2)].heat == quoin::materials::HeatDirection::down);
  REQUIRE(back.spaces[SpaceId(2)].losses.size() == 1);
  CHECK(back.spaces[SpaceId(2)].losses[0].by_metre == base.spaces[SpaceId(2)].losses[0].by_metre);
}

TEST_CASE("own materials, bands, likes, probes and odd names survive being written as a sheet") {
  const Case text = read(R"(quoin: 1
cut: vertical
spaces:
  "hall: ground floor": {is: inside, temperature: 18.3, humidity: 57}
  yard: {is: outside, temperature: -4, wind: 2.5}
  "null": {like: "hall: ground floor", resistance: 0.45}
materials:
  mine: {conductivity: 1.1, density: 1800}
  'a "quoted" one':
    like: common brick
    conductivity: {value: 0.71, low: 0.6, high: 0.8, source: "report 7, p. 3", confidence: published}
    moisture: 0.05 m3/m3
  wet stone: {like: common brick, law: {per volume table: {}}, moisture: at 80 %}
section:
  sheet:
    - {fill: mine, outline: [[0, 0], [330, 0], [330, 500], [200, 500], [200, 1000], [0, 1000]]}
    - {fill: 'a "quoted" one', x: [200, 330], y: [500, 1000], part: frame}
    - {fill: wet stone, x: [0, 330], y: [1000, 1333.3]}
    - {fill: "hall: ground floor", x: [330, 430], y: [0, 1000]}
    - {fill: "null", x: [330, 430], y: [1000, 1333.3]}
    - {fill: yard, x: [-100, 0], y: [0, 1333.3]}
    - {fill: nothing, x: [100, 120], y: [100, 120]}
  bands:
    - {of: wet stone, x: [0, 100], moisture: damp}
    - {of: mine, y: [0, 90], moisture: 0.03 m3/m3}
probes: {A: [330, 500], "B 2": [0, 10]}
readings: {A: {temperature: 12.5}}
criteria: {mould: {surface humidity: 75}, fRsi: 0.7}
accuracy: {fRsi: 0.001, L2D: 0.05 %}
)");
  check_round_trip(text.variants[0]);
}

TEST_CASE("a material of the catalogue is written by name, an own one in full") {
  const std::string wall = "section: {wall: {layers: [[lime plaster, 15], [mine, 330]]}}\n";
  const std::string same =
      sheet_text(read(head + "materials: {mine: {like: cob}}\n" + wall).variants[0]);
  CHECK(same.find("  mine: {like: cob}\n") != std::string::npos);
  CHECK(same.find("lime plaster: {") == std::string::npos);
  const std::string changed =
      sheet_text(read(head + "materials: {mine: {like: cob, density: 1500}}\n" + wall).variants[0]);
  CHECK(changed.find("density: 1500") != std::string::npos);
  CHECK(changed.find("like: cob") == std::string::npos);
}

TEST_CASE("every starting case reads without faults or remarks") {
  const auto points = starting_points();
  CHECK(points.size() >= 4);
  for (const StartingPoint& point : points) {
    CAPTURE(point.name);
    const auto text = starting_case(point.name);
    REQUIRE(text);
    const Case start = read(*text);
    for (const Variant& variant : start.variants) CHECK(variant.remarks.empty());
  }
  CHECK_FALSE(starting_case("roof of gold"));
}

namespace {

std::vector<std::string> lines_of_text(const std::string& text) {
  std::vector<std::string> lines;
  std::istringstream stream(text);
  for (std::string line; std::getline(stream, line);) lines.push_back(line);
  return lines;
}

/// Lines that are commented out and belong together, from the first to before the last.
struct Hint {
  std::size_t from = 0, to = 0;
  std::string key;
};

std::size_t mark_in(const std::string& line) { return line.find_first_not_of(' '); }

/// The hints of a starting case: comments that are no sentences. Those below a key stand deeper.
std::vector<Hint> hints_of(const std::vector<std::string>& lines) {
  std::vector<Hint> hints;
  bool in_head = true;  // sentences about the file
  for (std::size_t k = 0; k < lines.size(); ++k) {
    const std::string& line = lines[k];
    in_head = in_head && line != "quoin: 1";
    const std::size_t mark = mark_in(line);
    if (in_head || mark == std::string::npos || line[mark] != '#') continue;
    const std::string text = line.substr(mark + 2);
    if (!hints.empty() && hints.back().to == k && mark_in(text) > 0 &&
        mark_in(lines[hints.back().from]) == mark) {
      ++hints.back().to;
      continue;
    }
    const bool is_hint = text[0] == '-' || (text[0] >= 'a' && text[0] <= 'z');
    if (is_hint) hints.push_back({k, k + 1, text.substr(0, text.find(':'))});
  }
  return hints;
}

std::string with(std::vector<std::string> lines, const std::vector<Hint>& shown) {
  for (const Hint& hint : shown) {
    for (std::size_t k = hint.from; k < hint.to; ++k) lines[k].erase(mark_in(lines[k]), 2);
  }
  std::string text;
  for (const std::string& line : lines) text += line + '\n';
  return text;
}

/// Whether a hint needs another: a space or a material that it names, or what it is a measure of.
bool needs(const std::vector<std::string>& lines, const Hint& one, const Hint& other) {
  const std::multimap<std::string, std::string> known{{"readings", "probes"},
                                                      {"void", "floor"},
                                                      {"void depth", "void"},
                                                      {"damp course", "damp course height"},
                                                      {"damp course sheet", "damp course height"},
                                                      {"closer", "- {material"}};
  const auto [first, last] = known.equal_range(one.key);
  for (auto need = first; need != last; ++need) {
    if (need->second == other.key) return true;
  }
  const std::string& line = lines[one.from];
  return one.key.rfind("sub-frame ", 0) == 0 ? other.key == "sub-frame"
                                             : line.find(": " + other.key + "  ") != line.npos ||
                                                   line.find(": " + other.key + ',') != line.npos;
}

/// A hint with all that it needs, and where it is a space the line that names it.
std::vector<Hint> with_needs(const std::vector<std::string>& lines, const std::vector<Hint>& all,
                             const Hint& hint) {
  std::vector<Hint> shown{hint};
  for (bool grown = true; grown;) {
    grown = false;
    for (const Hint& other : all) {
      const bool there = std::any_of(shown.begin(), shown.end(),
                                     [&](const Hint& one) { return one.from == other.from; });
      const bool wanted = needs(lines, other, hint) ||
                          std::any_of(shown.begin(), shown.end(),
                                      [&](const Hint& one) { return needs(lines, one, other); });
      if (there || !wanted) continue;
      shown.push_back(other);
      grown = true;
      break;
    }
  }
  return shown;
}

}  // namespace

TEST_CASE("each hint of a starting case works once its comment mark is taken away") {
  std::size_t tried = 0;
  for (const StartingPoint& point : starting_points()) {
    CAPTURE(point.name);
    const std::vector<std::string> lines = lines_of_text(*starting_case(point.name));
    const std::vector<Hint> hints = hints_of(lines);
    CHECK(hints.size() >= 12);
    for (const Hint& hint : hints) {
      CAPTURE(hint.key);
      ++tried;
      if (quoin::testing::faults_of(with(lines, {hint})).empty()) continue;
      (void)read(with(lines, with_needs(lines, hints, hint)));
    }
  }
  CHECK(tried >= 150);
}

TEST_CASE("the catalogue reads, each material named once and with a source for every value") {
  const Catalogue all = catalogue();
  CHECK(all.materials.size() >= 40);
  std::vector<std::string> names = all.names();
  std::sort(names.begin(), names.end());
  CHECK(std::adjacent_find(names.begin(), names.end()) == names.end());
  for (const auto& material : all.materials) {
    CAPTURE(material.name);
    CHECK(material.conductivity.value > 0.0);
    CHECK_FALSE(material.conductivity.source.empty());
    CHECK(material.conductivity.confidence != quoin::materials::Confidence::stated);
    CHECK_FALSE(material.density.source.empty());
    CHECK_FALSE(material.about.empty());
  }
  REQUIRE(all.find("common brick") != nullptr);
  CHECK(all.find("common brik") == nullptr);
}

TEST_CASE("a material read alone is the same as read with all others") {
  const Catalogue all = catalogue();
  CHECK(shelf_names() == all.names());
  for (const auto& material : all.materials) {
    CAPTURE(material.name);
    REQUIRE(from_shelf(material.name) != nullptr);
    CHECK(from_shelf(material.name)->name == material.name);
    CHECK(material_text(*from_shelf(material.name)) == material_text(material));
  }
  CHECK(from_shelf("common brik") == nullptr);
  CHECK(is_on_shelf("common brick"));
  CHECK_FALSE(is_on_shelf("sources"));
}

TEST_CASE("a faulty catalogue is refused with the place of each fault") {
  try {
    (void)catalogue_of(
        "quoin catalogue: 1\nsources: {lab: A report}\nmaterials:\n"
        "  a: {conductivity: {value: 1300, source: lab}, density: {value: 1, source: labb}}\n",
        "catalogue.yaml");
    FAIL("read");
  } catch (const InputError& error) {
    REQUIRE(error.faults.size() >= 2);
    CHECK(error.faults[0].line == 4);
  }
}

TEST_CASE("the schema names every key that the reader knows") {
  const std::string schema = schema_text();
  for (const char* key : {"quoin",
                          "title",
                          "spaces",
                          "materials",
                          "section",
                          "probes",
                          "readings",
                          "criteria",
                          "accuracy",
                          "variants",
                          "wall",
                          "corner",
                          "reveal",
                          "sheet",
                          "bands",
                          "frame setback",
                          "moisture at 80 %",
                          "between dry and saturated",
                          "surface humidity",
                          "plus or minus"}) {
    CAPTURE(key);
    CHECK(schema.find('"' + std::string(key) + "\": {") != std::string::npos);
  }
  CHECK(std::count(schema.begin(), schema.end(), '{') ==
        std::count(schema.begin(), schema.end(), '}'));
}
