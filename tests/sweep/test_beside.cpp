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
