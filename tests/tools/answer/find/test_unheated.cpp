// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/run.hpp"

using namespace quoin;
using testing::WithinAbs;
using testing::WithinRel;
using tools::SolvedVariant;

namespace {

/// A wall with a porch built against half of it; all invented.
std::string porch_case(const std::string& yard, const std::string& porch) {
  return "quoin: 1\n"
         "spaces:\n"
         "  hall: {is: inside, temperature: 18, humidity: 60}\n"
         "  yard: {is: outside, temperature: 2, humidity: 90" +
         yard +
         "}\n"
         "  porch: {is: unheated, " +
         porch +
         "}\n"
         "materials: {brick: {conductivity: 0.8, density: 1700}}\n"
         "section:\n"
         "  sheet:\n"
         "    - {fill: yard, x: [-1000, 0], y: [-800, 0]}\n"
         "    - {fill: porch, x: [102, 1000], y: [-800, 0]}\n"
         "    - {fill: brick, x: [0, 102], y: [-800, 0]}\n"
         "    - {fill: brick, x: [-1000, 1000], y: [0, 225]}\n"
         "    - {fill: hall, x: [-1000, 1000], y: [225, 325]}\n"
         "probes: {open: [-900, 225], porch side: [900, 225]}\n";
}

SolvedVariant solved(const std::string& text) {
  return tools::solved(cases::case_of(text, "case.yaml").variants.front(), {});
}

const geometry::SpaceId hall(0u), yard(1u), porch(2u);

TEST_CASE("an unheated porch takes the temperature at which its heat balances") {
  const SolvedVariant one = solved(porch_case("", "losses: {yard: 6}"));
  const double temperature = one.variant.spaces[porch].temperature;
  CHECK(temperature > 2.0);
  CHECK(temperature < 18.0);
  // What flows out of the section into the porch goes on to the yard.
  CHECK(-one.heat.flows[porch] == WithinRel{6.0 * (temperature - 2.0), 1e-3});
  // The two ends of the bracket are 0.1 % apart; the flow is that of the upper one.
  const SolvedVariant stated =
      solved(porch_case("", "temperature: " + std::to_string(temperature)));
  CHECK(one.surface.probes[1].temperature.value ==
        WithinAbs{stated.surface.probes[1].temperature.value, 1e-4});
  CHECK(one.heat.flows[hall] == WithinRel{stated.heat.flows[hall], 1e-3});
}

TEST_CASE("the leakier the porch, the colder it is and the wall behind it") {
  const SolvedVariant tight = solved(porch_case("", "losses: {yard: 1}"));
  const SolvedVariant leaky = solved(porch_case("", "losses: {yard: 20}"));
  CHECK(leaky.variant.spaces[porch].temperature < tight.variant.spaces[porch].temperature - 1.0);
  CHECK(leaky.surface.probes[1].temperature.value < tight.surface.probes[1].temperature.value);
}

TEST_CASE("a clear sky and a stated evaporation cool the surface by the heat they take") {
  const std::string plain = porch_case("", "temperature: 7");
  const SolvedVariant dry = solved(plain);
  // 20 g/m2h x 2.5e6 J/kg = 13.9 W/m2, with 0.04 m2K/W: like air of 0.556 K less.
  const SolvedVariant damp = solved(porch_case(", evaporation: 20", "temperature: 7"));
  CHECK(damp.variant.spaces[yard].cooling == WithinAbs{0.5556, 1e-4});
  CHECK(damp.variant.spaces[yard].temperature == 2.0);
  std::string text = plain;
  text.replace(text.find("temperature: 2,"), 15, "temperature: 1.4444444444,");
  CHECK(damp.surface.probes[0].temperature.value ==
        WithinAbs{solved(text).surface.probes[0].temperature.value, 1e-6});
  CHECK(damp.surface.probes[0].temperature.value < dry.surface.probes[0].temperature.value - 0.1);
  CHECK(solved(porch_case(", clear sky: 11", "temperature: 7")).variant.spaces[yard].cooling > 0.5);
}

TEST_CASE("a wet surface settles where the heat it takes and the water that leaves agree") {
  const SolvedVariant bare = solved(porch_case(", wet surface: {}", "temperature: 7"));
  const SolvedVariant painted =
      solved(porch_case(", wet surface: {coat sd: 1 m}", "temperature: 7"));
  const SolvedVariant dry = solved(porch_case("", "temperature: 7"));
  CHECK(bare.variant.spaces[yard].cooling > 0.3);
  CHECK(painted.variant.spaces[yard].cooling > 0.0);
  CHECK(painted.variant.spaces[yard].cooling < 0.02);
  CHECK(bare.surface.probes[0].temperature.value < dry.surface.probes[0].temperature.value - 0.1);
  // Water as fast as that, stated as a rate, cools as much.
  const double rate = bare.variant.spaces[yard].cooling / 0.04 / 2.5e6 * 3.6e6;
  const SolvedVariant stated =
      solved(porch_case(", evaporation: " + std::to_string(rate), "temperature: 7"));
  CHECK(stated.surface.probes[0].temperature.value ==
        WithinAbs{bare.surface.probes[0].temperature.value, 1e-4});
  const auto warns = [](const SolvedVariant& variant, const std::string& words) {
    bool found = false;
    for (const std::string& warning : variant.warnings)
      found = found || warning.find(words) != std::string::npos;
    return found;
  };
  CHECK(warns(bare, "iterations"));
  // A rate that a surface wet through could not lose is doubted.
  CHECK_FALSE(warns(stated, "cannot leave"));
  CHECK(warns(solved(porch_case(", evaporation: " + std::to_string(2 * rate), "temperature: 7")),
              "cannot leave"));
}

}  // namespace
