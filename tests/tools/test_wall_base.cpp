// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/physics.hpp"
#include "tools/run.hpp"
#include "tools/text_section.hpp"
#include "tools/text_words.hpp"

namespace quoin::tools {
namespace {

using materials::Purpose;
using testing::WithinAbs;

cases::Variant base(const std::string& inputs) {
  return cases::case_of(
             "quoin: 1\ntitle: Foot\nspaces:\n"
             "  hall: {is: inside, temperature: 20}\n"
             "  yard: {is: outside, temperature: 0}\n"
             "  underfloor: {is: unheated, temperature: 6}\n"
             "section:\n  wall base:\n"
             "    layers: [[common brick, 225]]\n    foundation: [[common brick, 225]]\n"
             "    footing: limestone rubble\n    ground: clay soil\n" +
                 inputs,
             "case.yaml")
      .variants.at(0);
}

RegionId region(const cases::Variant& variant, const std::string& name) {
  for (const RegionId id : geometry::ids(variant.regions)) {
    if (variant.regions[id].name == name) return id;
  }
  return {};
}

}  // namespace

TEST_CASE("floors have the resistances of heat that goes down, walls of heat that goes sideways") {
  // Source: ISO 6946 and ISO 13788, from memory.
  const cases::Variant variant = base(
      "    floor: [[softwood across the grain, 22]]\n"
      "    void: underfloor\n");
  CHECK(variant.cut == cases::Cut::vertical);
  const RegionId boards = region(variant, "softwood across the grain");
  const RegionId brick = region(variant, "common brick");
  const SpaceId hall(0), underfloor(2);
  const solver::Physics heat = physics_of(variant, Purpose::heat_flow);
  CHECK(heat.surface_resistance(hall, boards, geometry::Facing::up) == 0.17);
  CHECK(heat.surface_resistance(underfloor, boards, geometry::Facing::down) == 0.17);
  CHECK(heat.surface_resistance(hall, brick, geometry::Facing::sideways) == 0.13);
  const solver::Physics surface = physics_of(variant, Purpose::surface_temperature);
  CHECK(surface.surface_resistance(hall, boards, geometry::Facing::up) == 0.25);
}

TEST_CASE("psi of a wall base comes by both options of the standard, which are not far apart") {
  const SolvedVariant foot = solved(base("    floor: [[hard limestone, 60]]\n"), {});
  REQUIRE(foot.psi.size() == 4);
  CHECK(words_for(foot.psi.front()) == "internal dimensions, floor by ISO 13370");
  CHECK(words_for(foot.psi.back()) == "internal dimensions, floor solved");
  // Common practice, no source: the options differ by what is laid under the wall, a few
  // hundredths.
  CHECK(foot.psi.front().value.value == WithinAbs{foot.psi.back().value.value, 0.08});
  CHECK(foot.psi.front().value.value != foot.psi.back().value.value);
  CHECK(solved(base("    floor: [[softwood across the grain, 22]]\n    void: underfloor\n"), {})
            .psi.empty());
}

TEST_CASE("a drawing of a wall base shows its foot, not all the ground") {
  const cases::Variant variant = base("    floor: [[hard limestone, 60]]\n");
  const std::string text = section_drawing(variant, {});
  CHECK(text.find("of the section, which runs on") != std::string::npos);
  cases::Variant whole = variant;
  whole.close_up.reset();
  CHECK(section_drawing(whole, {}).find("runs on") == std::string::npos);
}

}  // namespace quoin::tools
