// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <string>
#include <vector>

#include "tests/cases/read_support.hpp"

using quoin::testing::faults_of;
using quoin::testing::head;
using quoin::testing::read;
using namespace quoin::cases;

namespace {

const std::string bare = "section: {wall: {layers: [[lime plaster, 15], [common brick, 330]]}}\n";
const std::string lined =
    "section: {wall: {layers: [[wood fibre board, 40], [common brick, 330]]}}\n";
const std::string thickness = "enough: {thickness: {of: wood fibre board, up to: 100}}\n";

}  // namespace

TEST_CASE("a thickness is asked of a layer that at least one of the variants asked has") {
  CHECK(faults_of(head + bare + thickness).size() == 1);
  CHECK(faults_of(head + lined + thickness).empty());
  CHECK(faults_of(head + bare + thickness + "variants: {before: ~, lined: {" +
                  lined.substr(0, lined.size() - 1) + "}}\n")
            .empty());
  // A variant that has the layer but takes the question back does not help the one that asks.
  CHECK(faults_of(head + bare + thickness + "variants: {before: ~, lined: {enough: ~, " +
                  lined.substr(0, lined.size() - 1) + "}}\n")
            .size() == 1);
}

TEST_CASE("a moisture is asked of a material that is shown and can hold water") {
  const auto faults_with = [](const std::string& saturation) {
    return faults_of(head + "materials: {own: {conductivity: 1.1, density: 1900" + saturation +
                     "}}\nsection: {wall: {layers: [[own, 330]]}}\nenough: {moisture: own}\n");
  };
  const auto unknown = faults_with("");
  REQUIRE(unknown.size() == 1);
  CHECK(unknown[0].remedy.find("saturation: 0.25 m3/m3") != std::string::npos);
  CHECK(faults_with(", saturation: 0.25 m3/m3").empty());  // the remedy as it says
  CHECK(faults_of(head + bare + "enough: {moisture: oolitic limestone}\n").size() == 1);
  CHECK(read(head + bare + "enough: {moisture: common brick}\n").variants[0].enough.moisture_of ==
        "common brick");
}
