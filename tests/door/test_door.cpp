// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <nlohmann/json.hpp>
#include <string>

#include "cases/read.hpp"
#include "tests/support/within.hpp"
#include "tools/answer/run.hpp"
#include "tools/door/door.hpp"
#include "tools/output/json/findings.hpp"

namespace quoin::door {
namespace {

using nlohmann::json;
using testing::WithinAbs;

constexpr const char* corner = R"(quoin: 1
title: Corner
note: Invented.
spaces:
  kitchen: {is: inside, temperature: 19, humidity: 60}
  outdoors: {is: outside, temperature: 2}
section:
  corner:
    layers:                       # from the inside out
      - {material: lime plaster, thickness: 15}
      - {material: common brick, thickness: 330}
variants:
  lined:
    section:
      corner:
        layers:
          - {material: wood fibre board, thickness: 40}
          - {membrane: 1 m}
          - {material: lime plaster, thickness: 15}
          - {material: common brick, thickness: 330}
)";

}  // namespace

TEST_CASE("the door gives the findings of the pipeline letter by letter") {
  const std::string wanted = tools::findings_json(
      tools::results_of(cases::case_of(corner, "corner.yaml"), "corner.yaml", {}));
  CHECK(solve(corner) == wanted);
  CHECK(solve(edited(corner, "spaces/kitchen/temperature", "18")) != wanted);
}

TEST_CASE("pictures come beside the findings and change none of them") {
  json with = json::parse(solve(corner, {"", true, {}, 1}));
  REQUIRE(with.contains("pictures"));
  CHECK(with["pictures"].size() == 7);
  CHECK(with["pictures"].contains("field-lined.svg"));
  with.erase("pictures");
  CHECK(with == json::parse(solve(corner)));
}

TEST_CASE("one variant alone is found as among the others") {
  const json all = json::parse(solve(corner));
  const json one = json::parse(solve(corner, {"lined", false, {}, 1}));
  REQUIRE(one["variants"].size() == 1);
  CHECK(one["variants"][0] == all["variants"][1]);
  CHECK(one["variants"][0] != all["variants"][0]);
  CHECK_THROWS_AS((void)solve(corner, {"nobody", false, {}, 1}), Refusal);
}

TEST_CASE("a refusal tells every fault with its place") {
  const std::string broken = edited(edited(corner, "spaces/outdoors/temperature", "2,5"),
                                    "section/corner/layers/1/material", "comon brick");
  try {
    (void)solve(broken);
    FAIL("nothing was refused");
  } catch (const Refusal& refusal) {
    CHECK(refusal.kind == Refusal::Kind::input);
    const json faults = json::parse(refusal.faults);
    REQUIRE(faults.size() == 2);
    CHECK(faults[0]["line"] == 6);
    CHECK(faults[0]["found"] == "2,5");
    CHECK(faults[1]["line"] == 11);
    CHECK(faults[1]["remedy"].get<std::string>().find("common brick") != std::string::npos);
  }
}

TEST_CASE("every recipe starts a case that the door solves and shows") {
  for (const json& point : json::parse(starts())) {
    CAPTURE(point["name"]);
    const std::string text = start(point["name"].get<std::string>());
    const json shown = json::parse(glance(text, {"", 0.0, true, {}}));
    CHECK(shown["rooms"].size() >= 1);
    CHECK(shown["picture"].get<std::string>().find("<svg") != std::string::npos);
    CHECK_NOTHROW((void)handles(text, ""));
  }
  CHECK_THROWS_AS((void)start("cathedral"), Refusal);
}

TEST_CASE("a glance has the temperatures of the findings") {
  const json found = json::parse(solve(corner));
  for (const char* variant : {"as found", "lined"}) {
    const json seen = json::parse(glance(corner, {variant, 0.0, true, {}}));
    const json& full = found["variants"][std::string(variant) == "lined" ? 1 : 0];
    CHECK(full["name"] == variant);
    const std::string text = full.dump();
    // The same number to the digits that findings print.
    const double coldest = seen["rooms"][0]["coldest_C"];
    bool met = false;
    for (const json& item : full.flatten()) {
      if (item.is_number() && std::abs(item.get<double>() - coldest) < 1e-9) met = true;
    }
    CHECK(met);
  }
}

TEST_CASE("an edge on its room's side is a handle with its path") {
  const json told = json::parse(handles(corner, ""));
  const json& all = told["handles"];
  // Two layers, each along both legs.
  REQUIRE(all.size() == 4);
  const double scale = told["view"]["units_per_mm"], left = told["view"]["left"];
  for (const json& handle : all) {
    const bool plaster = handle["material"] == "lime plaster";
    CHECK(handle["path"] ==
          (plaster ? "section/corner/layers/0/thickness" : "section/corner/layers/1/thickness"));
    CHECK(handle["value"] == (plaster ? 15.0 : 330.0));
    CHECK(handle["grows"] == 1);
    if (handle["axis"] != "x") continue;
    // The outside face is x = 0: the plaster ends at 345 mm, the brick at 330.
    const double at = (handle["from"][0].get<double>() - left) / scale;
    CHECK(at == WithinAbs{plaster ? 345.0 : 330.0, 1e-6});
  }
}

TEST_CASE("handles of a variant lead to where its layers are written") {
  const json all = json::parse(handles(corner, "lined"))["handles"];
  REQUIRE(all.size() == 6);
  CHECK(all[0]["path"] == "variants/lined/section/corner/layers/0/thickness");
  CHECK(all.back()["path"] == "variants/lined/section/corner/layers/3/thickness");
  CHECK(all.back()["layer"] == 3);
}

TEST_CASE("an edge moves by as much as its value is changed") {
  for (const char* recipe :
       {"wall", "corner", "reveal", "sill", "head", "partition", "wall base"}) {
    CAPTURE(recipe);
    const std::string text = start(recipe);
    const json before = json::parse(handles(text, ""));
    REQUIRE(before["handles"].size() >= 2);
    const auto spread = [](const json& told, const json& handle, const json& other) {
      const std::size_t axis = handle["axis"] == "x" ? 0 : 1;
      return std::abs(handle["from"][axis].get<double>() - other["from"][axis].get<double>()) /
             told["view"]["units_per_mm"].get<double>();
    };
    // Two edges of one list and way next to each other lie as far apart as the inner layer is
    // thick.
    for (std::size_t k = 0; k + 1 < before["handles"].size(); ++k) {
      const json& one = before["handles"][k];
      for (const json& other : before["handles"]) {
        if (other["list"] != one["list"] || other["axis"] != one["axis"] ||
            other["grows"] != one["grows"] || other["layer"] != one["layer"].get<int>() + 1)
          continue;
        CHECK(spread(before, one, other) == WithinAbs{one["value"].get<double>(), 0.011});
      }
    }
  }
}

TEST_CASE("a layer on a slope has a handle that moves across it") {
  std::string text = placed(start("reveal"), "section/reveal/lining",
                            "[{material: wood fibre board, thickness: 30}]");
  const auto lining = [](const std::string& of) {
    const json told = json::parse(handles(of, ""));
    std::vector<json> found;
    for (const json& handle : told["handles"]) {
      // Its end in the wall's face moves along y.
      if (handle["list"] == "lining" && handle["axis"] == "x") found.push_back(handle);
    }
    return found;
  };
  const std::vector<json> straight = lining(text);
  REQUIRE(straight.size() == 1);
  CHECK(std::abs(straight[0]["grows"].get<double>()) == 1.0);
  text = placed(text, "section/reveal/splay", "60");
  const std::vector<json> sloped = lining(text);
  REQUIRE(sloped.size() == 1);
  const json& one = sloped[0];
  CHECK(one["from"][0] != one["to"][0]);
  CHECK(one["from"][1] != one["to"][1]);
  const double wide = one["to"][0].get<double>() - one["from"][0].get<double>();
  const double high = one["to"][1].get<double>() - one["from"][1].get<double>();
  const double lies = std::max(std::abs(wide), std::abs(high)) / std::hypot(wide, high);
  CHECK(std::abs(one["grows"].get<double>()) == WithinAbs{lies, 1e-9});
  CHECK(std::abs(one["grows"].get<double>()) < 1.0);
}

TEST_CASE("a section of a house is read with what only its house knows") {
  const std::string probed = placed(corner, "probes", "{A: [645, 345]}");
  const std::string text =
      placed(probed, "readings", "{A: {temperature: 12, with: contact probe}}");
  CHECK_THROWS_AS((void)glance(text), Refusal);
  CHECK_THROWS_AS((void)solve(text), Refusal);
  Look look;
  look.of_house = true;
  CHECK(json::parse(glance(text, look))["rooms"] == json::parse(glance(probed))["rooms"]);
  Wanted wanted;
  wanted.of_house = true;
  CHECK(json::parse(solve(text, wanted))["variants"].size() == 2);
  CHECK(report(text, {}, true).size() > report(corner).size() / 2);
}

TEST_CASE("the catalogue tells what moisture does to the conductivity") {
  const json all = json::parse(catalogue());
  CHECK(all["materials"].size() > 20);
  CHECK(all["coats"].size() > 5);
  const auto brick = std::find_if(all["materials"].begin(), all["materials"].end(),
                                  [](const json& one) { return one["name"] == "common brick"; });
  REQUIRE(brick != all["materials"].end());
  CHECK((*brick)["moistures"].size() == 5);
  CHECK((*brick)["moistures"][4]["W_per_mK"] > (*brick)["moistures"][0]["W_per_mK"]);
}

}  // namespace quoin::door
