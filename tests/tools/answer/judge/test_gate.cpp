// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "cases/read.hpp"
#include "tools/answer/judge/gate.hpp"

namespace quoin::tools {
namespace {

/// Why no favourable verdict is given to a section of brick of a moisture.
std::string gate_of(const std::string& section, const std::string& moisture = "saturated",
                    const std::string& materials = "") {
  const cases::Case read = cases::case_of(
      "quoin: 1\ntitle: invented\n"
      "spaces:\n"
      "  room: {is: inside, temperature: 20, humidity: 40}\n"
      "  yard: {is: outside, temperature: 0, humidity: 90}\n"
      "materials:\n"
      "  wall brick: {like: common brick, moisture: " +
          moisture + "}\n" + materials + "section:\n  " + section + "\n",
      "gate.yaml", {});
  return gate(read.variants.front());
}

/// A wall, its layers from inside.
std::string wall(const std::string& layers) { return "wall: {layers: [" + layers + "]}"; }

/// Of masonry wetter than damp.
bool shuts_in(const std::string& layers, const std::string& materials = "") {
  return !gate_of(wall(layers), "saturated", materials).empty();
}

}  // namespace

TEST_CASE("insulation on masonry wetter than damp is gated, with both names") {
  const std::string lined = wall("[lime plaster, 10], [wood fibre board, 80], [wall brick, 225]");
  CHECK(gate_of(lined) ==
        "wall brick would be closed in by wood fibre board while it is wetter than damp");
  CHECK(gate_of(lined, "damp").empty());  // the twin: damp is no more than damp
}

TEST_CASE("insulating plasters, light blocks and boards shut masonry in, plaster and wood do not") {
  CHECK(shuts_in("[hemp lime plaster, 80], [wall brick, 225]"));
  CHECK(shuts_in("[cork lime plaster, 60], [wall brick, 225]"));
  CHECK(shuts_in("[gypsum board, 12], [aircrete, 100], [wall brick, 225]"));
  CHECK(shuts_in("[wall brick, 225], [EPS, 60]"));
  CHECK(shuts_in("[EPS, 60], [lime plaster, 15], [wall brick, 225]"));  // on the old plaster
  CHECK_FALSE(shuts_in("[lime plaster, 25], [wall brick, 225]"));
  CHECK_FALSE(shuts_in("[gypsum board, 12], [wall brick, 225]"));
  CHECK_FALSE(shuts_in("[softwood across the grain, 25], [wall brick, 225]"));
  CHECK_FALSE(shuts_in("[oak across the grain, 25], [wall brick, 225]"));
}

TEST_CASE("beyond a layer of air only boards and batts shut masonry in") {
  const std::string gap = "  gap: {air layer: 25}\n";
  CHECK(shuts_in("[gypsum board, 12], [PIR board, 30], [gap, 25], [wall brick, 225]", gap));
  CHECK_FALSE(shuts_in("[gypsum board, 12], [gap, 25], [wall brick, 225]", gap));
  CHECK_FALSE(shuts_in("[lime plaster, 12], [aircrete, 100], [gap, 25], [wall brick, 102]", gap));
}

TEST_CASE("a partition full of insulation that abuts on a wet wall does not cover it") {
  const std::string partition =
      "\n    partition: [[gypsum board, 12], [mineral wool, 75], [gypsum board, 12]]";
  CHECK(gate_of("partition:\n    layers: [[wall brick, 225]]\n"
                "    lining: [[lime plaster, 15]]" +
                partition)
            .empty());
  // The twin: lined beside the same partition.
  CHECK_FALSE(gate_of("partition:\n    layers: [[wall brick, 225]]\n"
                      "    lining: [[mineral wool, 15]]" +
                      partition)
                  .empty());
}

TEST_CASE("insulation gates only where it covers what is wet") {
  const auto with_band = [](const std::string& y) {
    return gate_of(
        "sheet:\n"
        "    - {fill: yard, x: [-100, 0], y: [0, 2000]}\n"
        "    - {fill: wall brick, x: [0, 225], y: [0, 2000]}\n"
        "    - {fill: EPS, x: [225, 285], y: [1000, 2000]}\n"
        "    - {fill: room, x: [225, 385], y: [0, 1000]}\n"
        "    - {fill: room, x: [285, 385], y: [1000, 2000]}\n"
        "  bands: [{of: wall brick, y: " +
            y + ", moisture: saturated}]",
        "dry");
  };
  CHECK_FALSE(with_band("[900, 1100]").empty());
  CHECK(with_band("[0, 900]").empty());
}

TEST_CASE("a material does not shut itself in") {
  const std::string hemp = "  hemp wall: {like: hemp lime, moisture: 0.3 m3/m3}\n";
  CHECK_FALSE(shuts_in("[lime plaster, 10], [hemp wall, 300]", hemp));
  CHECK(shuts_in("[wood fibre board, 60], [hemp wall, 300]", hemp));
}

}  // namespace quoin::tools
