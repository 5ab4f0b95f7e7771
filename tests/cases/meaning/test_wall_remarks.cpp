// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/meaning/wall_remarks.hpp"
#include "tests/cases/read_support.hpp"

namespace quoin::cases {
namespace {

using testing::read;

/// The remarks of a variant that hold some words, with their lines: "7: the wall ...".
std::string remarks_with(const Case& source, std::size_t variant, const std::string& words) {
  std::string text;
  for (const Remark& remark : source.variants.at(variant).remarks) {
    if (remark.text.find(words) != std::string::npos)
      text += std::to_string(remark.line) + ": " + remark.text + "\n";
  }
  return text;
}

std::string thin(const std::string& section) {
  return remarks_with(read(testing::head + section), 0, "centimetres");
}

std::string of_layers(const std::string& recipe, const std::string& layers) {
  return thin("section: {" + recipe + ": {layers: [" + layers + "]}}\n");
}

std::string sheet(int brick) {
  const std::string end = std::to_string(brick);
  return "section:\n  sheet:\n"
         "    - {fill: hall, x: [-100, 0], y: [0, 1000]}\n"
         "    - {fill: common brick, x: [0, " +
         end + "], y: [0, 1000]}\n    - {fill: yard, x: [" + end + ", 700], y: [0, 1000]}\n";
}

/// A wall with a variant that draws these layers in its place.
Case with_variant(const std::string& layers) {
  return read(testing::head +
              "section: {corner: {layers: [[lime plaster, 15], [common brick, 330]]}}\n"
              "variants:\n  other: {section: {corner: {layers: [" +
              layers + "]}}}\n");
}

std::string lost(const std::string& layers) {
  return remarks_with(with_variant(layers), 1, "replaces the whole list");
}

/// The foot of a wall above a void with air bricks, mm2 by metre, and a variant with others.
Case over_void(const std::string& before, const std::string& after) {
  return read(testing::head + "  void: {is: unheated, humidity: 85, " + before +
              "}\n"
              "section:\n  wall base:\n    layers: [[common brick, 225]]\n"
              "    foundation: [[common brick, 225]]\n    footing: limestone rubble\n"
              "    ground: clay soil\n    floor: [[softwood across the grain, 22]]\n"
              "    void: void\n"
              "variants:\n  other: {spaces: {void: {" +
              after + "}}}\n");
}

}  // namespace

TEST_CASE("a wall whose centimetres were written for millimetres is remarked on with its remedy") {
  CHECK(of_layers("corner", "[lime plaster, 15], [common brick, 33]") ==
        "5: the wall between 'hall' and 'yard' is 48 mm thick, 33 mm of it 'common brick': if that "
        "was measured in centimetres, write 330 or 33 cm\n");
  CHECK(of_layers("wall", "[common brick, 22.5]") != "");
  CHECK(thin(sheet(33)).find("8: the wall") == 0);  // at the area that shows the brick
}

TEST_CASE("a short leg hides no wall that is too thin") {
  CHECK(thin("section: {corner: {leg: 50, layers: [[common brick, 33]]}}\n") != "");
  CHECK(thin("section: {wall: {height: 100, layers: [[common brick, 33]]}}\n") != "");
  CHECK(thin("section: {wall: {height: 100, layers: [[common brick, 330]]}}\n") == "");
}

TEST_CASE("a wall with a nought too many is remarked on and a thick one is not") {
  const auto thick = [](const std::string& thickness) {
    return remarks_with(read(testing::head +
                             "section: {corner: {layers: [[lime plaster, 15], "
                             "[common brick, " +
                             thickness + "]]}}\n"),
                        0, "nought");
  };
  CHECK(thick("3300").find("3300 mm of it 'common brick': if that is a nought too many, write "
                           "330") != std::string::npos);
  CHECK(thick("1200") == "");
}

TEST_CASE("walls that are built thin are not remarked on") {
  CHECK(of_layers("corner", "[lime plaster, 15], [common brick, 330]") == "");
  CHECK(of_layers("wall", "[common brick, 102]") == "");
  CHECK(of_layers("wall", "[lime plaster, 15], [common brick, 65]") == "");  // brick on edge
  CHECK(of_layers("wall",
                  "[gypsum board, 12], [mineral wool, 60], [softwood across the grain, 20]") == "");
  CHECK(thin(sheet(225)) == "");
}

TEST_CASE("a variant that lost its masonry is remarked on where it stands") {
  const std::string text = lost("[lime plaster, 15], [wood fibre board, 60]");
  CHECK(text.find(
            "7: the wall has 15 mm of masonry and plaster, where the case as written has 345") ==
        0);
  CHECK(lost("[lime plaster, 15]") != "");
}

TEST_CASE("a variant that keeps its masonry or has other masonry is not remarked on") {
  CHECK(
      lost("[lime plaster, 8], [wood fibre board, 60], [lime plaster, 15], [common brick, 330]") ==
      "");
  CHECK(lost("[lime plaster, 15], [hard limestone, 330]") == "");
}

TEST_CASE("a sheet that lost its masonry in a variant is remarked on, one that kept it is not") {
  const auto sheets = [](int brick) {
    return read(testing::head + sheet(330) + "variants:\n  other:\n    " + [&] {
      std::string text = sheet(brick), indented;
      for (const char c : text) indented += c == '\n' ? std::string("\n    ") : std::string(1, c);
      return indented;
    }() + "\n");
  };
  CHECK(remarks_with(sheets(100), 1, "replaces the whole list") != "");
  CHECK(remarks_with(sheets(300), 1, "replaces the whole list") == "");
}

TEST_CASE("less air through the void of a floor is told to rot its timber") {
  const Case blocked = over_void("air bricks: 1500", "air bricks: 0");
  CHECK(remarks_with(blocked, 1, "rot").find(": less outside air passes 'void'") !=
        std::string::npos);
  CHECK(is_less_vented(blocked.variants[0], blocked.variants[1]));
  const Case open = over_void("air bricks: 1500", "air bricks: 3000");
  CHECK(remarks_with(open, 1, "rot") == "");
  CHECK_FALSE(is_less_vented(open.variants[0], open.variants[1]));
  const Case still_enough = over_void("air bricks: 3000", "air bricks: 1500");
  CHECK_FALSE(is_less_vented(still_enough.variants[0], still_enough.variants[1]));
  const Case as_much = over_void("air bricks: 1500", "humidity: 90");
  CHECK_FALSE(is_less_vented(as_much.variants[0], as_much.variants[1]));
}

TEST_CASE("frost beside the ground is told to stand for a month") {
  const auto remark = [](const std::string& temperature) {
    return remarks_with(
        read("quoin: 1\nspaces:\n  hall: {is: inside, temperature: 18}\n  yard: {is: outside, "
             "temperature: " +
             temperature +
             "}\nsection:\n  wall base:\n    layers: [[common brick, 225]]\n"
             "    foundation: [[common brick, 225]]\n    footing: limestone rubble\n"
             "    ground: clay soil\n"),
        0, "mean of the coldest month");
  };
  CHECK(remark("-8").find("'yard' is at -8.0 °C") != std::string::npos);
  CHECK(remark("2") == "");
}

}  // namespace quoin::cases
