// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <string>
#include <vector>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/numbers.hpp"
#include "tools/answer/run.hpp"

namespace quoin::tools {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

/// A plain wall between a room and whatever stands on its other side.
std::string wall(const std::string& other_side) {
  return "quoin: 1\n"
         "title: A wall\n"
         "spaces:\n"
         "  room: {is: inside, temperature: 20, humidity: 50}\n"
         "  beyond: " +
         other_side +
         "\n"
         "materials:\n"
         "  wall stone: {conductivity: 0.8, density: 1800}\n"
         "section:\n"
         "  sheet:\n"
         "    - {fill: room, x: [-100, 0], y: [0, 1000]}\n"
         "    - {fill: wall stone, x: [0, 400], y: [0, 1000]}\n"
         "    - {fill: beyond, x: [400, 500], y: [0, 1000]}\n";
}

SolvedVariant solved_wall(const std::string& other_side) {
  return solved(cases::case_of(wall(other_side), "wall.yaml").variants.front(), {});
}

}  // namespace

TEST_CASE("each purpose has its own surface resistance: 0.25 for the surface, 0.13 for the flow") {
  const SolvedVariant result = solved_wall("{is: outside, temperature: 0}");
  const double wall_resistance = 0.4 / 0.8;
  const double factor = 1 - 0.25 / (0.25 + wall_resistance + 0.04);
  CHECK(result.surface.airs.front().coldest.factor.value == WithinAbs{factor, 1e-9});
  const double transmittance = 1 / (0.13 + wall_resistance + 0.04);
  CHECK(result.heat.couplings.front().value == WithinRel{transmittance, 1e-9});
}

TEST_CASE("a resistance fixed by the author holds for both purposes") {
  const SolvedVariant result = solved_wall("{is: outside, temperature: 0, resistance: 0.08}");
  CHECK(result.heat.couplings.front().value == WithinRel{1 / (0.13 + 0.5 + 0.08), 1e-9});
  CHECK(result.surface.airs.front().coldest.factor.value ==
        WithinAbs{1 - 0.25 / (0.25 + 0.5 + 0.08), 1e-9});
}

TEST_CASE("a variant of an upright section has its thermometer proved, a row of a sweep does not") {
  const SolvedVariant result = solved_wall("{is: outside, temperature: 0}");
  const auto& proved = result.surface.airs.front().thermometer;
  REQUIRE(proved.has_value());
  const double surface = 20 - 20 * 0.25 / (0.25 + 0.5 + 0.04);  // exact in a plane wall
  CHECK(proved->low <= surface + 1e-9);
  CHECK(proved->high >= surface - 1e-9);
  CHECK(proved->high - proved->low == WithinAbs{0.0, 1e-9});
  SolvedVariant row;
  row.variant = result.variant;
  static_cast<void>(solve_numbers(row, {}, solver::solution_of));
  CHECK_FALSE(row.surface.airs.front().thermometer.has_value());
}

TEST_CASE("heat flows into the section from the warm side and out of it on the cold side") {
  const SolvedVariant result = solved_wall("{is: outside, temperature: 0}");
  CHECK(result.heat.flows[SpaceId(0)] > 0.0);
  CHECK(result.heat.flows[SpaceId(1)] == WithinRel{-result.heat.flows[SpaceId(0)], 1e-9});
}

TEST_CASE("where nothing is outside the factor is measured against the coldest space") {
  const SolvedVariant result = solved_wall("{is: unheated, temperature: 5}");
  const double factor = result.surface.airs.front().coldest.factor.value;
  CHECK(factor > 0.0);
  CHECK(factor < 1.0);
  const double temperature = result.surface.airs.front().coldest.temperature.value;
  CHECK(factor == WithinAbs{(temperature - 5) / 15, 1e-9});
}

TEST_CASE("every variant is solved and told of before") {
  const std::string text = wall("{is: outside, temperature: 0}") +
                           "variants:\n"
                           "  colder: {spaces: {beyond: {temperature: -10}}}\n"
                           "  stiller: {spaces: {room: {resistance: 0.5}}}\n";
  std::vector<std::string> told;
  const Results results =
      results_of(cases::case_of(text, "wall.yaml"), "wall.yaml", {},
                 [&](const std::string& name, std::size_t number, std::size_t of) {
                   CHECK(number == told.size());
                   CHECK(of == 3);
                   told.push_back(name);
                 });
  CHECK(told == std::vector<std::string>{"as found", "colder", "stiller"});
  REQUIRE(results.variants.size() == 3);
  CHECK(results.changes.size() == 2);
  CHECK(results.file == "wall.yaml");
  CHECK(results.sha256.size() == 64);
}

TEST_CASE("the same case gives the same bits") {
  const SolvedVariant one = solved_wall("{is: outside, temperature: 0}");
  const SolvedVariant two = solved_wall("{is: outside, temperature: 0}");
  CHECK(one.surface.temperature == two.surface.temperature);
  CHECK(one.heat.couplings.front().low == two.heat.couplings.front().low);
  CHECK(one.summary == two.summary);
}

}  // namespace quoin::tools
