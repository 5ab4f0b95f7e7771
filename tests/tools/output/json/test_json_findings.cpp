// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <limits>
#include <nlohmann/json.hpp>

#include "tests/support/within.hpp"
#include "tests/tools/by_hand.hpp"
#include "tests/tools/golden.hpp"
#include "tools/answer/results/version.hpp"
#include "tools/answer/run.hpp"
#include "tools/output/json/findings.hpp"

using namespace quoin;
using namespace quoin::tools;
using nlohmann::json;
using quoin::testing::WithinRel;

namespace {

json findings(const Results& results) { return json::parse(findings_json(results)); }

bool has_number(const json& value) {
  return value.is_number() && std::isfinite(value.get<double>());
}

TEST_CASE("findings.json is the golden one") {
  std::string text = findings_json(testing::results_by_hand());
  const std::string version = std::string("\"quoin\": \"") + QUOIN_VERSION;
  REQUIRE(text.find(version) != std::string::npos);
  text.replace(text.find(version), version.size(), "\"quoin\": \"VERSION");
  CHECK(testing::is_golden(text, "findings.json"));
}

TEST_CASE("findings.json has every key that scripts may rely on") {
  const json all = findings(testing::results_by_hand());
  CHECK(all["quoin"] == QUOIN_VERSION);
  CHECK(all["format"] == 1);
  CHECK(all["title"].is_string());
  CHECK(all["input_sha256"] == std::string(64, 'a'));
  const json& variant = all["variants"].at(0);
  CHECK(variant["name"] == "as found");
  const json& coldest = variant["surface"]["spaces"]["hall"]["coldest"];
  for (const char* key : {"temperature_C", "x_mm", "y_mm", "fRsi", "fRsi_band",
                          "surface_humidity_percent", "thermometer_10mm_C"}) {
    CAPTURE(std::string(key));
    CHECK(has_number(coldest[key]));
  }
  CHECK(coldest["x_mm"] == 345.0);
  CHECK(coldest["surface_humidity_percent"] == 110.0);
  CHECK(has_number(variant["surface"]["probes"]["A"]["temperature_C"]));
  CHECK(has_number(variant["surface"]["probes"]["A"]["band_K"]));
  CHECK(variant["surface"]["flows_W_m"] == json({{"hall", 66.5}, {"yard", -66.5}}));
  CHECK(has_number(variant["heat"]["flows_W_m"]["hall"]));
  CHECK(has_number(variant["heat"]["probes"]["A"]["temperature_C"]));
  const json& coupling = variant["heat"]["L2D_W_mK"].at(0);
  CHECK(coupling["between"] == json({"hall", "yard"}));
  CHECK(coupling["low"] < coupling["value"]);
  CHECK(coupling["value"] < coupling["high"]);
  const json& verdict = variant["verdicts"].at(0);
  CHECK(verdict["criterion"] == "mould");
  CHECK(verdict["space"] == "hall");
  CHECK(verdict["holds"] == false);
  CHECK(verdict["margin"] == -30.0);
  CHECK(verdict["unit"] == "%RH");
  const json& check = variant["checks"].at(0);
  CHECK(check["name"] == "heat balance");
  CHECK(check["holds"] == true);
  CHECK(has_number(check["value"]));
  CHECK(has_number(check["limit"]));
  CHECK(variant["mesh"]["nodes"].is_number_integer());
}

TEST_CASE("a number that is not one is null") {
  Results results = testing::results_by_hand();
  results.variants[0].surface.airs[0].coldest.factor.value = std::nan("");
  results.variants[0].psi[0].value.band = std::numeric_limits<double>::infinity();
  const std::string text = findings_json(results);
  const json all = json::parse(text);
  CHECK(all["variants"][0]["surface"]["spaces"]["hall"]["coldest"]["fRsi"].is_null());
  CHECK(all["variants"][0]["psi_W_mK"][0]["band"].is_null());
  CHECK(text.find("nan") == std::string::npos);
}

TEST_CASE("numbers read back to the bits that were written") {
  Results results = testing::results_by_hand();
  for (const double value : {0.1, 1.0 / 3.0, 9.842345678901234, -1e-17, 6.02e23}) {
    results.variants[0].surface.airs[0].coldest.temperature.value = value;
    CHECK(findings(results)["variants"][0]["surface"]["spaces"]["hall"]["coldest"]["temperature_C"]
              .get<double>() == value);
  }
}

TEST_CASE("names of any bytes give valid JSON with the name in it") {
  const std::string name = "</script>\"\\\n\x01 \xF0\x9F\x94\xA5";
  CHECK(findings(testing::results_named(name))["title"] == name);
  CHECK_NOTHROW(findings(testing::results_named("\xFF\xFE not UTF-8")));
}

TEST_CASE("the same case solved twice gives the same bytes") {
  const cases::Case source = testing::small_case();
  CHECK(findings_json(results_of(source, "a.yaml", {})) ==
        findings_json(results_of(source, "b.yaml", {})));
}

TEST_CASE("findings of a solved case agree with each other") {
  const json all = findings(results_of(testing::small_case(), "a.yaml", {}));
  REQUIRE(all["variants"].size() == 3);
  for (const json& variant : all["variants"]) {
    const json& coldest = variant["surface"]["spaces"]["hall"]["coldest"];
    const double factor = coldest["fRsi"], temperature = coldest["temperature_C"];
    CHECK(temperature == WithinRel{1.0 + 17.0 * factor, 1e-6});  // definition of fRsi, rounding
    const json& flows = variant["heat"]["flows_W_m"];
    const double in = flows["hall"], out = flows["yard"];
    CHECK(in == WithinRel{-out, 1e-6});  // heat balance
    const json& coupling = variant["heat"]["L2D_W_mK"][0];
    // the flow is the upper bound of the bracket or better; the bracket is 0.1 % wide
    CHECK(in / 17.0 == WithinRel{coupling["value"].get<double>(), 2e-3});
  }
  CHECK(all["changes"].size() == 2);
}

}  // namespace
