// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "tools/answer/words/compare.hpp"
#include "tools/run.hpp"

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

TEST_CASE("one variant alone has no changes") {
  CHECK(changes({results().variants.front()}).empty());
  CHECK(changes({}).empty());
}

}  // namespace quoin::tools
