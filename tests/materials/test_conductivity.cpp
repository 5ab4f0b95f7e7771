// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>
#include <string_view>

#include "materials/conductivity.hpp"
#include "tests/materials/samples.hpp"
#include "tests/support/within.hpp"

using namespace quoin::materials;
using quoin::testing::WithinRel;

namespace {

bool warns_of(const Conductivity& conductivity, std::string_view words) {
  return conductivity.warning && conductivity.warning->find(words) != std::string::npos;
}

bool has_flaw(const Material& material, std::string_view words) {
  const std::vector<std::string> found = flaws(material);
  return found.size() == 1 && found[0].find(words) != std::string::npos;
}

const Material brick = material(0.61, 1692, 0.242, BetweenDryAndSaturated{1.35});

TEST_CASE("moisture above saturation is taken as saturated, and said") {
  const Conductivity soaked = conductivity_of(brick, 0.30);
  CHECK(soaked.value == conductivity_of(brick, 0.242).value);
  CHECK(warns_of(soaked, "more than its saturation, 0.242 m3/m3"));
  CHECK_FALSE(conductivity_of(brick, 0.242).warning.has_value());
}

TEST_CASE("moisture below 0 is taken as dry, and said") {
  const Conductivity odd = conductivity_of(brick, -0.01);
  CHECK(odd.value == 0.61);
  CHECK(warns_of(odd, "below 0"));
}

TEST_CASE("without a known saturation the pores that the density allows are the limit") {
  const Material unknown = material(0.61, 1680, {}, PerMassPercent{8.5});
  CHECK(pore_space(1680) == WithinRel{0.4, 1e-15});
  CHECK_FALSE(warns_of(conductivity_of(unknown, 0.39), "pores"));
  const Conductivity soaked = conductivity_of(unknown, 0.50);
  CHECK(warns_of(soaked, "more than the pores hold at 1680 kg/m3, 0.4 m3/m3"));
  CHECK(soaked.value == conductivity_of(unknown, pore_space(1680)).value);
}

TEST_CASE("the line between dry and saturated warns where the saturation is a guess") {
  const Material unknown = material(0.61, 1692, {}, BetweenDryAndSaturated{1.35});
  CHECK_FALSE(conductivity_of(unknown, 0.0).warning.has_value());
  CHECK(warns_of(conductivity_of(unknown, 0.1), "saturation is not known"));
}

TEST_CASE("metal holds no water") {
  const Material steel = material(50, 7800, {}, Constant{});
  CHECK(conductivity_of(steel, 0.0).value == 50.0);
  CHECK_FALSE(conductivity_of(steel, 0.0).warning.has_value());
  CHECK(conductivity_of(steel, 0.1).value == 50.0);
  CHECK(warns_of(conductivity_of(steel, 0.1), "more than the pores hold"));
}

TEST_CASE("a moist material whose growth with moisture is unknown keeps its value, and says so") {
  const Material plaster = material(0.57, 1300, {}, Constant{});
  CHECK(conductivity_of(plaster, 0.05).value == 0.57);
  CHECK(warns_of(conductivity_of(plaster, 0.05), "no growth with moisture is known"));
}

TEST_CASE("a value above what wet stone, brick or concrete conducts is doubted") {
  // By hand: 4.0^0.75 x 0.60^0.25 = 2.4893
  CHECK(wet_mineral_bound(0.25) == WithinRel{2.4893, 1e-4});
  const Material calculated = material(0.59, 1692, 0.25, BetweenDryAndSaturated{4.61});
  CHECK(warns_of(conductivity_of(calculated, 0.25), "more than wet stone, brick or concrete"));
  const Material tested = material(0.91, 1730, 0.245, BetweenDryAndSaturated{2.14});
  CHECK_FALSE(conductivity_of(tested, 0.245).warning.has_value());
}

TEST_CASE("a warning names the material and the moisture, and gathers all doubts") {
  Material wall = material(0.61, 1692, 0.242, Exponential{.per_volume = 10.0});
  wall.name = "north wall";
  const Conductivity soaked = conductivity_of(wall, 0.3);
  CHECK(warns_of(soaked, "north wall at 0.3 m3/m3: "));
  CHECK(warns_of(soaked, "more than its saturation"));
  CHECK(warns_of(soaked, "trusted to 0.05 m3/m3"));
  CHECK(warns_of(soaked, "more than wet stone"));
}

TEST_CASE("a law is trusted up to its limit and not a trace further") {
  const Material wall = material(0.61, 1692, 0.242, Exponential{.per_volume = 10.0, .limit = 0.1});
  CHECK_FALSE(conductivity_of(wall, 0.1).warning.has_value());
  CHECK(warns_of(conductivity_of(wall, 0.1001), "trusted to 0.1 m3/m3"));
}

TEST_CASE("the exponential law counts moisture by mass on the dry mass") {
  // Aircrete, 600 kg/m3: 0.027 m3/m3 are 0.045 kg/kg; factor exp(4 x 0.045).
  const Material aircrete = material(0.16, 600, {}, Exponential{.per_mass = 4.0});
  CHECK(conductivity_of(aircrete, 0.027).value == WithinRel{0.16 * std::exp(0.18), 1e-14});
}

TEST_CASE("a material that contradicts itself is told so in plain words") {
  CHECK(flaws(brick).empty());
  CHECK(has_flaw(material(0.61, 1692, 0.242, BetweenDryAndSaturated{0.5}),
                 "water conducts better than the air it displaces"));
  CHECK(has_flaw(material(0.61, 1692, {}, BetweenDryAndSaturated{1.35}), "needs the saturation"));
  CHECK(has_flaw(material(1.1, 2200, 0.35, Constant{}), "does not fit into"));
  CHECK(has_flaw(material(0.61, 1692, 0.242, Exponential{}), "needs a coefficient"));

  Material hygroscopic = brick;
  hygroscopic.moisture_at_80 = sourced(0.3);
  CHECK(has_flaw(hygroscopic, "more than saturated"));
}

TEST_CASE("a table of factors that cannot be is told so") {
  const auto table = [](std::vector<std::pair<double, double>> factors) {
    return material(0.61, 1692, 0.242, PerVolumeTable{std::move(factors)});
  };
  CHECK(flaws(table({{0, 1}, {5, 1.75}})).empty());
  CHECK(has_flaw(table({{0, 1}}), "two rows"));
  CHECK(has_flaw(table({}), "two rows"));
  CHECK(has_flaw(table({{1, 1.3}, {5, 1.75}}), "begin with moisture 0"));
  CHECK(has_flaw(table({{0, 1.1}, {5, 1.75}}), "factor 1"));
  CHECK(has_flaw(table({{0, 1}, {5, 1.75}, {5, 1.8}}), "must grow, but 5 % follows 5 %"));
  CHECK(has_flaw(table({{0, 1}, {5, 1.75}, {6, 1.7}}), "must not fall, but 1.7 follows 1.75"));
}

}  // namespace
