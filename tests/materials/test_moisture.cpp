// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <initializer_list>
#include <string>
#include <string_view>

#include "materials/moisture.hpp"
#include "tests/materials/samples.hpp"
#include "tests/support/within.hpp"

using namespace quoin::materials;
using quoin::testing::WithinAbs;
using quoin::testing::WithinRel;

namespace {

Material brick_of(std::optional<double> saturation, std::optional<double> at_80 = {}) {
  Material brick = material(0.61, 1700, saturation, Constant{});
  if (at_80) brick.moisture_at_80 = sourced(*at_80);
  return brick;
}

double known(const Material& material, const MoistureState& state) {
  const auto moisture = moisture_of(material, state);
  REQUIRE(std::holds_alternative<double>(moisture));
  return std::get<double>(moisture);
}

bool unknown(const Material& material, const MoistureState& state, std::string_view words) {
  const auto moisture = moisture_of(material, state);
  const auto* missing = std::get_if<UnknownMoisture>(&moisture);
  return missing != nullptr && missing->reason.find(words) != std::string::npos;
}

TEST_CASE("in a brick of 25 % the named states are 0, 2, 5, 10 and 25 % by volume") {
  const Material brick = brick_of(0.25);
  CHECK(known(brick, NamedState::dry) == 0.0);
  CHECK(known(brick, NamedState::sheltered) == WithinRel{0.02, 1e-15});
  CHECK(known(brick, NamedState::exposed) == WithinRel{0.05, 1e-15});
  CHECK(known(brick, NamedState::damp) == WithinRel{0.10, 1e-15});
  CHECK(known(brick, NamedState::saturated) == 0.25);
}

TEST_CASE("named states fit into dense stone too, in the same order") {
  const Material granite = brick_of(0.01);
  double former = -1.0;
  for (const auto& named : named_states) {
    CAPTURE(named.first);
    const double moisture = known(granite, named.second);
    CHECK(moisture > former);
    CHECK(moisture <= 0.01);
    former = moisture;
  }
}

TEST_CASE("moisture by mass is counted on the dry mass") {
  // By hand: 0.058 kg/kg x 1700 kg/m3 / (1000 kg/m3)
  CHECK(known(brick_of(0.25), MassRatio{0.058}) == WithinAbs{0.0986, 1e-12});
  CHECK(known(brick_of(0.25), Concentration{98.6}) == WithinRel{0.0986, 1e-15});
  CHECK(known(brick_of(0.25), VolumeFraction{0.0986}) == 0.0986);
}

TEST_CASE("a stated moisture is not bent to what the material can hold") {
  CHECK(known(brick_of(0.25), VolumeFraction{0.4}) == 0.4);
}

TEST_CASE("dry is known of every material, the other states only with a saturation") {
  CHECK(known(brick_of({}), NamedState::dry) == 0.0);
  for (const NamedState state :
       {NamedState::sheltered, NamedState::exposed, NamedState::damp, NamedState::saturated}) {
    CHECK(unknown(brick_of({}), state, "no saturation is known for 'sample'"));
    CHECK_FALSE(unknown(brick_of(0.25), state, ""));
  }
}

TEST_CASE("the moisture in equilibrium with air needs a tabulated value and stops at 80 %") {
  CHECK(known(brick_of({}, 0.012), AtHumidity{0.80}) == 0.012);
  CHECK(known(brick_of({}, 0.012), AtHumidity{0.0}) == 0.0);
  CHECK(unknown(brick_of(0.25), AtHumidity{0.80}, "no moisture at 80 % humidity is known"));
  CHECK(unknown(brick_of(0.25, 0.012), AtHumidity{0.95}, "at 95 %"));
}

TEST_CASE("the line from dry to 80 % is near the tabulated moistures at 50 %") {
  struct Row {
    std::string_view name;
    double at_50, at_80;
  };
  // Source: ISO 10456:2007 table 4 (memory), moisture in air of 23 degC.
  for (const Row& row : std::initializer_list<Row>{{"fired clay", 0.007, 0.012},
                                                   {"calcium silicate brick", 0.012, 0.024},
                                                   {"dense concrete", 0.025, 0.040},
                                                   {"aircrete, by mass", 0.026, 0.045},
                                                   {"mortar", 0.04, 0.06},
                                                   {"wood fibre, by mass", 0.10, 0.16}}) {
    CAPTURE(row.name);
    // A quarter: of moistures this small it moves a conductivity by less than 4 %.
    CHECK(known(brick_of({}, row.at_80), AtHumidity{0.50}) == WithinRel{row.at_50, 0.2501});
  }
}

TEST_CASE("damp itself is not wetter than damp but a trace more is, and so is saturated") {
  const Material brick = brick_of(0.25);
  CHECK_FALSE(wetter_than_damp(brick, 0.0));
  CHECK_FALSE(wetter_than_damp(brick, known(brick, NamedState::exposed)));
  CHECK_FALSE(wetter_than_damp(brick, known(brick, NamedState::damp)));
  CHECK(wetter_than_damp(brick, 0.1001));
  CHECK(wetter_than_damp(brick, known(brick, NamedState::saturated)));
}

TEST_CASE("dense stone is wetter than damp at a moisture that would be nothing to a brick") {
  CHECK(wetter_than_damp(brick_of(0.05), 0.03));
  CHECK_FALSE(wetter_than_damp(brick_of(0.25), 0.03));
}

TEST_CASE("where no saturation is known, wetter than damp begins at 10 % by volume") {
  CHECK_FALSE(wetter_than_damp(brick_of({}), 0.10));
  CHECK(wetter_than_damp(brick_of({}), 0.11));
}

}  // namespace
