// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <numbers>
#include <string>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/words/choices.hpp"
#include "tools/physics.hpp"
#include "tools/run.hpp"
#include "tools/text_section.hpp"

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
  // The ground in the void, too, takes heat that goes down.
  const RegionId soil = region(variant, "clay soil");
  CHECK(heat.surface_resistance(underfloor, soil, geometry::Facing::up) == 0.17);
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

TEST_CASE("an attic still lets heat rise through its floor, unless its author says otherwise") {
  // Source: ISO 6946, from memory.
  const auto resistance = [](const std::string& attic) {
    const cases::Variant variant =
        cases::case_of(
            "quoin: 1\ncut: vertical\nspaces:\n"
            "  hall: {is: inside, temperature: 20}\n  yard: {is: outside, temperature: 0}\n"
            "  attic: {is: unheated, temperature: 6" +
                attic +
                "}\nsection:\n  sheet:\n"
                "    - {fill: hall, x: [0, 1000], y: [-100, 0]}\n"
                "    - {fill: yard, x: [1000, 1100], y: [0, 100]}\n"
                "    - {fill: common brick, x: [0, 1000], y: [0, 100]}\n"
                "    - {fill: attic, x: [0, 1000], y: [100, 200]}\n",
            "case.yaml")
            .variants.at(0);
    return physics_of(variant, Purpose::heat_flow)
        .surface_resistance(SpaceId(2), RegionId(0), geometry::Facing::up);
  };
  CHECK(resistance("") == 0.10);
  CHECK(resistance(", heat goes: down") == 0.17);
}

TEST_CASE("psi over a void is what passes to outdoors, by the void as well, less wall and floor") {
  const std::string floor =
      "    floor: [[softwood across the grain, 22]]\n    void: underfloor\n"
      "    floor width: 5 m\n";
  const auto with_void = [&](const std::string& air) {
    std::string text =
        "quoin: 1\ntitle: Foot\nspaces:\n  hall: {is: inside, temperature: 20}\n"
        "  yard: {is: outside, temperature: 0}\n  underfloor: {is: unheated, " +
        air +
        "}\nsection:\n  wall base:\n    layers: [[common brick, 225]]\n"
        "    foundation: [[common brick, 225]]\n    footing: limestone rubble\n"
        "    ground: clay soil\n" +
        floor;
    return solved(cases::case_of(text, "case.yaml").variants.at(0), {});
  };
  const SolvedVariant foot = with_void("air bricks: 1500");
  REQUIRE(foot.psi.size() == 3);
  CHECK(words_for(foot.psi.front()) == "internal dimensions, floor by ISO 13370");
  CHECK(foot.variant.remarks.empty());
  // What the room loses with the void at the temperature of its balance, and wall and floor by
  // hand: the independent way.
  const double conducted = foot.heat.flows[SpaceId(0)] / 20;
  const double brick = foot.conductivity[region(foot.variant, "common brick")].value;
  const double boards = foot.conductivity[region(foot.variant, "softwood across the grain")].value;
  const double soil = foot.conductivity[region(foot.variant, "clay soil")].value;
  const double wall = 1 / (0.13 + 0.225 / brick + 0.04);
  const double around = std::numbers::pi * 5.0, equivalent = 0.225 + soil * (0.17 + 0.04);
  const double ground = 2 * soil / (around + equivalent) * std::log(around / equivalent + 1);
  const double sides = (2 * 0.15 * wall + 1450 * 0.0015 * 4 * 0.05) / 5.0;
  const double u = 1 / (0.17 + 0.022 / boards + 0.17 + 1 / (ground + sides));
  CHECK(foot.psi[0].value.value == WithinAbs{conducted - 1.0 * wall - 2.5 * u, 3e-3});
  CHECK(foot.psi[2].value.value == WithinAbs{conducted - 1.0 * wall - 2.725 * u, 3e-3});
  // The formulas of the standard and the section differ by the foot alone: some tenths.
  CHECK(std::abs(foot.psi[0].value.value) < 0.3);
  // A negative twin: with twice the air the floor loses more, and psi by the old U would be off.
  const SolvedVariant windy = with_void("air bricks: {openings: 3000, shelter: exposed}");
  CHECK_FALSE(windy.heat.flows[SpaceId(0)] / 20 == WithinAbs{conducted, 0.03});
  CHECK(windy.psi[0].value.value == WithinAbs{foot.psi[0].value.value, 0.05});
  // No psi, and why, where the void's temperature is given or it loses heat to others.
  for (const char* air : {"temperature: 6", "losses: {yard: 0.2, hall: 0.1}"}) {
    const SolvedVariant given = with_void(air);
    CHECK(given.psi.empty());
    REQUIRE(given.variant.remarks.size() == 1);
    CHECK(given.variant.remarks[0].text.find("no psi") == 0);
  }
}

TEST_CASE("a wall with a well ventilated layer has the U of what lies inside of it") {
  const auto solved_with = [](const std::string& openings) {
    return solved(cases::case_of("quoin: 1\nspaces:\n  hall: {is: inside, temperature: 20}\n"
                                 "  yard: {is: outside, temperature: 0}\nmaterials:\n"
                                 "  leaf: {conductivity: 0.8, density: 1700}\n"
                                 "  cavity: {air layer: 50, openings: " +
                                     openings +
                                     "}\nsection: {wall: {layers: [[leaf, 100], [cavity, 50], "
                                     "[leaf, 100]]}}\n",
                                 "case.yaml")
                      .variants.at(0),
                  {});
  };
  const auto u_of = [](const SolvedVariant& variant) {
    for (const solver::Coupling& coupling : variant.heat.couplings)
      return coupling.value;  // of 1 m of wall
    return 0.0;
  };
  // Source: ISO 6946, from memory, by hand.
  const double open = 0.13 + 0.1 / 0.8 + 0.13;
  const SolvedVariant well = solved_with("1500");
  CHECK(well.plain.front().transmittance == WithinAbs{1 / open, 1e-9});
  CHECK(u_of(well) == WithinAbs{1 / open, 1e-6});
  const SolvedVariant still = solved_with("0");
  CHECK_FALSE(u_of(still) == WithinAbs{1 / open, 0.3});
  const SolvedVariant slight = solved_with("1000");
  CHECK(1 / u_of(slight) == WithinAbs{(open + 1 / u_of(still)) / 2, 1e-6});
  CHECK(slight.plain.front().transmittance == WithinAbs{u_of(slight), 1e-6});
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
