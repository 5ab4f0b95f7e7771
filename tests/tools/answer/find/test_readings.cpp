// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/find/readings.hpp"
#include "tools/answer/run.hpp"
#include "tools/output/report/parts.hpp"
#include "tools/output/text/report.hpp"

namespace quoin::testing {
namespace {

/// A plain wall with one reading on its inside face: with Rsi 0.25 it has 11.96 degC, with 0.13
/// about 14.4.
tools::Results wall_read_at(const std::string& reading) {
  const std::string text = R"(quoin: 1
title: A wall
spaces:
  room: {is: inside, temperature: 18.5, humidity: 62}
  yard: {is: outside, temperature: 2}
section:
  wall:
    layers:
      - {material: lime plaster, thickness: 15}
      - {material: common brick, thickness: 225, moisture: sheltered}
probes: {A: [0, 500]}
readings: {A: )" + reading +
                           R"(}
variants:
  saturated: {section: {wall: {layers: [{material: lime plaster, thickness: 15}, {material: common brick, thickness: 225, moisture: saturated}]}}}
  bare: {section: {wall: {layers: [{material: common brick, thickness: 225, moisture: sheltered}]}}}
  warmer: {spaces: {room: {temperature: 20}}}
  drier: {spaces: {room: {humidity: 50}}}
)";
  return tools::results_of(cases::case_of(text, "wall.yaml"), "wall.yaml", {});
}

tools::ComparedReading compared(const std::string& reading) {
  return tools::compared_readings(wall_read_at(reading).variants.front()).at(0);
}

}  // namespace

TEST_CASE("a reading between the two purposes is explained, one beyond its give or take is not") {
  const tools::ComparedReading between = compared("{temperature: 13.2, plus or minus: 0.5}");
  CHECK(between.explained);
  CHECK(between.with_surface < 13.2);
  CHECK(between.with_heat > 13.2);
  CHECK(compared("{temperature: 11.6, plus or minus: 0.5}").explained);
  CHECK_FALSE(compared("{temperature: 11.2, plus or minus: 0.5}").explained);
  CHECK_FALSE(compared("{temperature: 15.5, plus or minus: 0.5}").explained);
}

TEST_CASE("one surface resistance is taken for all readings of a variant") {
  // At the angle of a corner it is colder than on the leg, whatever the resistance: readings that
  // are alike are met each by another one, and both by none.
  tools::SolvedVariant solved;
  solved.variant.probes = {{"angle", {}}, {"leg", {}}};
  solved.variant.readings = {{"angle", 12.0, 0.3}, {"leg", 12.0, 0.3}};
  const auto probe = [](double value) { return solver::ProbeValue{{}, {value, 0.0, true}}; };
  solved.surface.probes = {probe(9.0), probe(11.9)};
  solved.heat.probes = {probe(12.1), probe(14.0)};
  const auto both = tools::compared_readings(solved);
  CHECK(both[0].explained != both[1].explained);
  solved.variant.readings = {{"angle", 10.5, 0.3}, {"leg", 12.9, 0.3}};
  const auto apart = tools::compared_readings(solved);  // the twin
  CHECK(apart[0].explained);
  CHECK(apart[1].explained);
  CHECK(apart[0].computed == WithinAbs{10.5, 0.3});
}

TEST_CASE(
    "the report says how many readings each variant explains, and nothing where none were taken") {
  tools::Results results = wall_read_at("{temperature: 13.2, plus or minus: 0.3}");
  const std::string text = tools::text_report(results, {.width = 200});
  CHECK(text.find("as found: explains 1 of 1 readings") != std::string::npos);
  CHECK(text.find("saturated: explains 0 of 1 readings") != std::string::npos);
  for (const char* other : {"bare", "warmer", "drier"})  // not the state that was read
    CHECK(text.find(std::string(other) + ": explains") == std::string::npos);
  for (tools::SolvedVariant& solved : results.variants) solved.variant.readings.clear();
  CHECK(tools::report::readings_part(results).empty());
}

}  // namespace quoin::testing
