// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cstdio>
#include <string>

#include "cases/read.hpp"
#include "tools/answer/run.hpp"
#include "tools/answer/words/short_legs.hpp"
#include "tools/output/report/report.hpp"

namespace quoin::tools {
namespace {

Results corner(const std::string& more) {
  return results_of(cases::case_of("quoin: 1\ntitle: invented\nspaces:\n"
                                   "  room: {is: inside, temperature: 20, humidity: 50}\n"
                                   "  yard: {is: outside, temperature: 0}\n"
                                   "section:\n  corner:\n    layers: [[common brick, 330]]\n" +
                                       more,
                                   "corner.yaml"),
                    "corner.yaml", {}, {});
}

/// The first warning that holds some words; empty where none does.
std::string warning(const SolvedVariant& solved, const std::string& words) {
  for (const std::string& each : solved.warnings) {
    if (each.find(words) != std::string::npos) return each;
  }
  return "";
}

double coldest(const Results& results) {
  return results.variants.front().surface.airs.front().coldest.temperature.value;
}

}  // namespace

TEST_CASE("a leg shorter than it should be is told with what it does to the coldest spot") {
  const Results cut = corner("    leg: 100\n"), whole = corner("");
  const std::string said = warning(cut.variants.front(), "cut off nearer");
  REQUIRE(said != "");
  CHECK(coldest(whole) - coldest(cut) > 1.0);  // K: it matters
  char should[64];
  std::snprintf(should, sizeof should, "is at %.1f °C instead of %.1f °C", coldest(whole),
                coldest(cut));
  CHECK(said.find(should) != std::string::npos);
  CHECK(warning(whole.variants.front(), "cut off nearer") == "");
}

TEST_CASE("beside a cut that matters temperatures are not called computed without more words") {
  const auto sure = [](const Results& results) { return report::document_of(results).first.sure; };
  CHECK(sure(corner("    leg: 100\n")).find("cut off too near") != std::string::npos);
  CHECK(sure(corner("")).find("cut off too near") == std::string::npos);
}

TEST_CASE("a short leg that moves nothing noticeable does not qualify the temperatures") {
  // Half of what is wanted: told among the warnings, as it may matter to L2D.
  const Results results = corner("    leg: 500\n");
  CHECK_FALSE(results.variants.front().cut_off);
  CHECK(warning(results.variants.front(), "cut off nearer") != "");
  CHECK(report::document_of(results).first.sure.find("cut off too near") == std::string::npos);
  CHECK(corner("    leg: 100\n").variants.front().cut_off);
}

TEST_CASE("legs as long as is wanted in a disturbed field are tried twice as long") {
  const auto porch = [](const std::string& moisture) {
    return results_of(
        cases::case_of("quoin: 1\ntitle: invented\nspaces:\n"
                       "  room: {is: inside, temperature: 20, humidity: 50}\n"
                       "  porch: {is: unheated, temperature: 8}\n"
                       "  yard: {is: outside, temperature: 0}\n"
                       "materials:\n  wall brick: {like: common brick, moisture: " +
                           moisture +
                           "}\nsection:\n  porch wall:\n    layers: [[wall brick, 345]]\n"
                           "    porch: porch\n    flank wall: [[wall brick, 102]]\n",
                       "porch.yaml"),
        "porch.yaml", {}, {});
  };
  const Results wet = porch("saturated"), dry = porch("dry");
  CHECK(warning(wet.variants.front(),
                "drawn twice as far the coldest spot of room stays the same") != "");
  CHECK(report::document_of(wet).first.sure.find("cut off too near") == std::string::npos);
  CHECK(warning(dry.variants.front(), "cut plane") == "");
}

TEST_CASE("a leg a little shorter than it should be is told to do nothing") {
  const Results results = corner("    leg: 940\n");
  CHECK(warning(results.variants.front(), "cut off nearer").find("stays the same within 0.05 K") !=
        std::string::npos);
}

}  // namespace quoin::tools
