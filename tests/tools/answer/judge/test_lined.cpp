// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>

#include "cases/read.hpp"
#include "tools/answer/judge/lined.hpp"

namespace quoin::tools {
namespace {

cases::Variant wall(const std::string& layers, const std::string& more = "") {
  return cases::case_of(
             "quoin: 1\ntitle: invented\n"
             "spaces:\n"
             "  room: {is: inside, temperature: 20, humidity: 50}\n"
             "  yard: {is: outside, temperature: 0, humidity: 90}\n"
             "materials:\n  gap: {air layer: 25}\n"
             "section: {wall: {layers: [" +
                 layers + "]}}\n" + more,
             "lined.yaml")
      .variants.front();
}

}  // namespace

TEST_CASE("a lining before masonry carries a word on the vapour behind it, where none was asked") {
  const std::string layers = "[lime plaster, 10], [wood fibre board, 60], [common brick, 330]";
  CHECK(
      lining_remark(wall(layers)).find("'wood fibre board' keeps 'common brick' behind it cold") ==
      0);
  CHECK(lining_remark(wall(layers, "vapour: {conditions: as stated, days: 60}\n")) == "");
  CHECK(lining_remark(wall("[lime plaster, 10], [common brick, 330]")) == "");
}

TEST_CASE("only insulation on the side of the room is a lining") {
  CHECK(lined_inside(wall("[gypsum board, 12], [gap, 25], [PIR board, 30], [common brick, 225]")));
  CHECK_FALSE(lined_inside(wall("[lime plaster, 15], [common brick, 225], [EPS, 100]")));
  CHECK_FALSE(lined_inside(wall("[common brick, 102], [mineral wool, 60], [common brick, 102]")));
  CHECK_FALSE(
      lined_inside(wall("[lime plaster, 15], [aircrete, 100], [gap, 25], [common brick, 102]")));
}

TEST_CASE("plaster that a line meets at its end is no masonry behind a lining") {
  const auto head = [](const std::string& soffit) {
    return cases::case_of(
               "quoin: 1\nspaces:\n  room: {is: inside, temperature: 20, humidity: 50}\n"
               "  yard: {is: outside, temperature: 0}\n"
               "section:\n  head:\n    layers: [[lime plaster, 15], [common brick, 330]]\n"
               "    lining: [" +
                   soffit +
                   "]\n    lintel: reinforced concrete\n    frame: softwood across the grain\n",
               "head.yaml")
        .variants.front();
  };
  const cases::Variant lined = head("[wood fibre board, 20]");
  REQUIRE(lined_inside(lined));
  CHECK(lined.regions[lined_inside(lined)->masonry].name == "common brick");
  CHECK_FALSE(lined_inside(head("[lime plaster, 20]")));
}

}  // namespace quoin::tools
