// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/find/timber_ends.hpp"
#include "tools/answer/run.hpp"
#include "tools/output/json/findings.hpp"

namespace quoin::tools {
namespace {

using testing::WithinAbs;
using testing::WithinRel;

/// A joist that reaches through a wall of its own conductivity: the field is that of the plane wall
/// far from the floor, and near enough at a floor of little height.
SolvedVariant floor_with(const std::string& spaces, const std::string& floor) {
  const cases::Case source = cases::case_of(
      "quoin: 1\ntitle: Joist\nspaces:\n" + spaces +
          "  outdoors: {is: outside, temperature: 0}\nsection:\n  floor: {" + floor + "}\n",
      "case.yaml");
  return solved(source.variants.at(0), {});
}

const std::string humid = "  hall: {is: inside, temperature: 20, humidity: 50}\n";
const std::string usual =
    "layers: [{material: common brick, thickness: 327}], joist: softwood along the grain, "
    "bearing: 110";

}  // namespace

TEST_CASE("a joist end is a probe, and its humidity is the room's vapour at its temperature") {
  const SolvedVariant floor = floor_with(humid, usual);
  REQUIRE(floor.timber_ends.size() == 1);
  const TimberEnd& end = floor.timber_ends.front();
  REQUIRE(floor.variant.probes.size() == 1);
  CHECK(floor.variant.probes.front().name == "the joist end");
  CHECK(end.temperature.value == floor.surface.probes.front().temperature.value);
  CHECK(end.temperature.value > 2.0);
  CHECK(end.temperature.value < 15.0);
  // Source: saturation pressures of ISO 13788 by its formula, from memory: at 9.2690 degC the air
  // of 20 degC and 50 % is saturated.
  REQUIRE(end.humidity);
  const bool saturated = *end.humidity > 1.0;
  CHECK(saturated == (end.temperature.value < 9.2690));
  CHECK(findings_json({"", "", "", "", {floor}, {}}).find("\"humidity_at_most_percent\"") !=
        std::string::npos);
}

TEST_CASE("lining the wall makes the joist end colder, and the words warn of rot") {
  const SolvedVariant bare = floor_with(humid, usual);
  const SolvedVariant lined =
      floor_with(humid, usual + ", lining: [{material: wood fibre board, thickness: 60}]");
  CHECK(lined.timber_ends.front().temperature.value <
        bare.timber_ends.front().temperature.value - 1.0);
  CHECK(words_for_timber_ends(lined).find("rots timber") != std::string::npos);
  CHECK(lined.summary.find("At the joist end it is") != std::string::npos);
}

TEST_CASE("the end of a concrete slab or a steel beam is no timber end") {
  for (const std::string material : {"concrete", "steel"}) {
    CAPTURE(material);
    std::string floor = usual;
    floor.replace(floor.find("softwood along the grain"), 24, material);
    const SolvedVariant slab = floor_with(humid, floor);
    CHECK(slab.timber_ends.empty());
    CHECK(slab.summary.find("rots timber") == std::string::npos);
    CHECK(slab.variant.probes.size() == 1);  // its temperature stays a finding
  }
}

TEST_CASE("where no humidity is known the joist end has a temperature only") {
  const SolvedVariant floor = floor_with("  hall: {is: inside, temperature: 20}\n", usual);
  REQUIRE(floor.timber_ends.size() == 1);
  CHECK_FALSE(floor.timber_ends.front().humidity);
  CHECK(words_for_timber_ends(floor).find("humidity") == std::string::npos);
}

TEST_CASE("of two rooms the one with more vapour counts") {
  const SolvedVariant floor = floor_with(
      "  bedroom: {is: inside, temperature: 16, humidity: 60}\n"
      "  kitchen: {is: inside, temperature: 20, humidity: 60}\n",
      usual + ", inside: bedroom, below: kitchen");
  REQUIRE(floor.timber_ends.front().humidity);
  CHECK(floor.variant.spaces[floor.timber_ends.front().room].name == "kitchen");
}

TEST_CASE("a section without timber in the masonry says nothing of it") {
  const SolvedVariant floor =
      floor_with(humid,
                 "layers: [{material: common brick, thickness: 327}], joist: reinforced concrete, "
                 "bearing: 0");
  CHECK(floor.timber_ends.empty());
  CHECK(words_for_timber_ends(floor).empty());
}

}  // namespace quoin::tools
