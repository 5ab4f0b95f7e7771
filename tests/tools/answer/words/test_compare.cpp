// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <string>

#include "cases/read.hpp"
#include "tools/answer/run.hpp"
#include "tools/answer/words/compare.hpp"

namespace quoin::tools {
namespace {

/// An invented jamb with variants.
const std::string jamb = R"(quoin: 1
title: An invented jamb
spaces:
  parlour: {is: inside, temperature: 20, humidity: 50}
  yard: {is: outside, temperature: 0}
materials:
  plaster of the jamb: {conductivity: 0.8, density: 1600}
  brick of the jamb: {conductivity: 0.77, density: 1800}
  board: {conductivity: 0.04, density: 150}
  frame wood: {conductivity: 0.13, density: 500}
section:
  reveal:
    layers:
      - {material: plaster of the jamb, thickness: 15}
      - {material: brick of the jamb, thickness: 330}
    lining: [{material: plaster of the jamb, thickness: 15}]
    frame: frame wood
variants:
  wall lined, reveal bare:
    section:
      reveal:
        layers:
          - {material: plaster of the jamb, thickness: 15}
          - {material: board, thickness: 60}
          - {material: brick of the jamb, thickness: 330}
  both lined:
    section:
      reveal:
        layers:
          - {material: plaster of the jamb, thickness: 15}
          - {material: board, thickness: 60}
          - {material: brick of the jamb, thickness: 330}
        lining:
          - {material: plaster of the jamb, thickness: 15}
          - {material: board, thickness: 20}
  the same again: {spaces: {yard: {temperature: 0}}}
)";

const Results& results() {
  static const Results solved = results_of(cases::case_of(jamb, "jamb.yaml"), "jamb.yaml", {});
  return solved;
}

}  // namespace

TEST_CASE("each later variant is compared with the first, in every inside air") {
  REQUIRE(results().changes.size() == 3);
  CHECK(results().changes[0].variant == "wall lined, reveal bare");
  CHECK(results().changes[2].variant == "the same again");
  const double before = results().variants.front().surface.airs.front().coldest.temperature.value;
  for (const Change& change : results().changes) CHECK(change.before == before);
}

TEST_CASE("lining the wall alone is told to make the reveal colder") {
  const Change& change = results().changes[0];
  CHECK(change.after < change.before - 0.5);
  REQUIRE_FALSE(change.colder.empty());
  CHECK(change.colder.front().before - change.colder.front().after > 0.5);
  CHECK(change.words.find("lowers the coldest spot of parlour") != std::string::npos);
  CHECK(change.words.find("the frame edge") != std::string::npos);
}

TEST_CASE("lining the reveal too is told to raise the coldest spot") {
  const Change& change = results().changes[1];
  CHECK(change.after > change.before + 0.5);
  CHECK(change.words.find("raises the coldest spot of parlour") != std::string::npos);
}

TEST_CASE("a variant that changes nothing is told to leave everything as it is") {
  const Change& change = results().changes[2];
  CHECK(change.after == change.before);
  CHECK(change.moved == 0.0);
  CHECK(change.colder.empty());
  CHECK(change.words.find("leaves the coldest spot") != std::string::npos);
  CHECK(change.words.find("colder") == std::string::npos);
}

TEST_CASE("a place beside a spot that gets warmer is not told by its name alone") {
  const auto partition = [](const std::string& lining) {
    return "    lining: [[wood fibre board, 40]]\n" + lining;
  };
  const Results results = results_of(
      cases::case_of("quoin: 1\ntitle: invented\nspaces:\n"
                     "  room: {is: inside, temperature: 20, humidity: 50}\n"
                     "  yard: {is: outside, temperature: 0}\n"
                     "section:\n  partition:\n    layers: [[common brick, 345]]\n"
                     "    partition: [[common brick, 132]]\n" +
                         partition("") +
                         "variants:\n  returned: {section: {partition: {return: [[wood fibre "
                         "board, 20]]}}}\n",
                     "partition.yaml"),
      "partition.yaml", {}, {});
  const std::string words = results.changes.front().words;
  REQUIRE(words.find("raises the coldest spot") != std::string::npos);
  CHECK(words.find("; a place beside the angle at the partition gets colder") != std::string::npos);
  CHECK(words.find("; the angle at the partition gets colder") == std::string::npos);
}

TEST_CASE("either side of a partition is compared with itself") {
  const Results results = results_of(
      cases::case_of("quoin: 1\ntitle: invented\nspaces:\n"
                     "  room: {is: inside, temperature: 18, humidity: 60}\n"
                     "  yard: {is: outside, temperature: 3}\n"
                     "section:\n  partition:\n    layers: [[common brick, 225]]\n"
                     "    partition: [[common brick, 112]]\n"
                     "variants:\n  lined: {section: {partition: {lining: [[wood fibre board, "
                     "40]]}}}\n",
                     "partition.yaml"),
      "partition.yaml", {}, {});
  // The section is its own mirror image, and so must be what gets colder in it.
  const Change& change = results.changes.front();
  REQUIRE(change.colder.size() == 2);
  const Colder& one = change.colder.front();
  const Colder& other = change.colder.back();
  // The grids of either side differ there by their errors: nodes are half a millimetre apart.
  CHECK(std::abs(one.before - other.before) < 0.1);
  CHECK(std::abs(one.place.x + other.place.x) < 1e-3);
  // Twin: the far end of the partition is as warm as the room, and not what the angle was.
  CHECK(one.before < 17.0);
}

TEST_CASE("heating at the same relative humidity is told to take more vapour") {
  const auto words = [](const std::string& room) {
    return results_of(cases::case_of("quoin: 1\ntitle: invented\nspaces:\n"
                                     "  room: {is: inside, temperature: 16, humidity: 60}\n"
                                     "  yard: {is: outside, temperature: 0}\n"
                                     "section:\n  wall: {layers: [[common brick, 345]]}\n"
                                     "variants:\n  other: {spaces: {room: " +
                                         room + "}}\n",
                                     "wall.yaml"),
                      "wall.yaml", {}, {})
        .changes.front()
        .words;
  };
  // Saturation pressures of 1817 and 2337 Pa at 16 and 20 degC (ISO 13788): 60 % become 46.7 %.
  CHECK(words("{temperature: 20}").find("29 % more vapour: with none added it would be at 47 %") !=
        std::string::npos);
  CHECK(words("{temperature: 12}").find("less vapour: with none taken out it would be at 78 %") !=
        std::string::npos);
  CHECK(words("{temperature: 20, humidity: 47}").find("vapour") == std::string::npos);
}

TEST_CASE("one variant alone has no changes") {
  CHECK(changes({results().variants.front()}).empty());
  CHECK(changes({}).empty());
}

}  // namespace quoin::tools
