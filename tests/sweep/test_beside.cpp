// SPDX-License-Identifier: Apache-2.0
#include "tools/sweep/beside.hpp"

#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "tools/answer/run.hpp"

namespace {

using namespace quoin;

/// A corner, invented, of this brick; the readings of its words where the catalogue has one like
/// it.
std::string words_beside(const std::string& brick, const std::string& lining = "") {
  const cases::Case source = cases::case_of(
      "quoin: 1\n"
      "spaces:\n"
      "  hall: {is: inside, temperature: 20, humidity: 50}\n"
      "  yard: {is: outside, temperature: 0}\n"
      "materials:\n  " +
          brick +
          "\n"
          "section:\n"
          "  corner:\n"
          "    layers: [{material: lime plaster, thickness: 15}" +
          lining + ", {material: " + brick.substr(0, brick.find(':')) + ", thickness: 215}]\n",
      "case.yaml");
  return tools::beside_catalogue(tools::solved(source.variants.front(), {}, {}));
}

}  // namespace

TEST_CASE("a corner of the catalogue's brick is told the row that it is, whatever its name") {
  // Row 0 of corner.csv: psi 0.1805, fRsi 0.4723.
  const std::string words = words_beside("wall brick: {like: common brick, moisture: dry}");
  CHECK(words.find("row 0 of corner.csv: psi 0.18, fRsi 0.47.") != std::string::npos);
  const std::string wetter = words_beside("wall brick: {like: common brick, moisture: damp}");
  CHECK(wetter.find("corner.csv") != std::string::npos);
  CHECK(wetter.find("row 0 of") == std::string::npos);
}

TEST_CASE("nothing is said beside masonry of the author's own or a lining that is not listed") {
  CHECK(words_beside("common brick: {conductivity: 0.8}").empty());
  CHECK(words_beside("wall brick: {like: common brick, conductivity: 0.8}").empty());
  CHECK(words_beside("wall brick: {like: common brick, moisture: dry}",
                     ", {material: wood fibre board, thickness: 41}")
            .empty());
}

TEST_CASE("a detail that is made up otherwise than those of the catalogue is not set beside them") {
  const auto words = [](const std::string& recipe, const std::string& of_room = "",
                        const std::string& more = "") {
    const cases::Case source = cases::case_of(
        "quoin: 1\nspaces:\n  hall: {is: inside, temperature: 20, humidity: 50" + of_room +
            "}\n  yard: {is: outside, temperature: 0}\n"
            "materials:\n  wall brick: {like: common brick, moisture: dry}\n"
            "section:\n  " +
            recipe + more,
        "case.yaml");
    return tools::beside_catalogue(tools::solved(source.variants.front(), {}, {}));
  };
  const std::string layers = "layers: [[lime plaster, 15], [wall brick, 327]]";
  const auto corner = [&](const std::string& more) { return "corner: {" + layers + more + "}\n"; };
  const auto jamb = [&](const std::string& frame, const std::string& more) {
    return "reveal: {" + layers + ", lining: [[lime plaster, 15]], frame: " + frame +
           ", frame depth: 56, frame setback: 60" + more + "}\n";
  };
  CHECK_FALSE(words(corner("")).empty());
  CHECK(words(corner(", turn: internal")).empty());
  CHECK(words(corner(""), ", behind: curtain").empty());
  CHECK(
      words(corner(""), "", "  bands: [{of: wall brick, x: [0, 200], moisture: damp}]\n").empty());
  CHECK(words("corner: {layers: [[lime plaster, 15], [wall brick, 327], "
              "[wood fibre board, 40]]}\n")
            .empty());
  CHECK_FALSE(words(jamb("softwood across the grain", "")).empty());
  CHECK(words(jamb("aluminium", "")).empty());
  CHECK(words(jamb("softwood across the grain", ", splay: 100")).empty());
  CHECK(words("reveal: {" + layers +
              ", frame: softwood across the grain, frame setback: 60, "
              "frame depth: 56}\n")
            .empty());
}
