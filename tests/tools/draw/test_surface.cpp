// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "tests/support/within.hpp"
#include "tests/tools/by_hand.hpp"
#include "tests/tools/golden.hpp"
#include "tests/tools/xml.hpp"
#include "tools/developed.hpp"
#include "tools/draw/canvas/lettering.hpp"
#include "tools/draw/canvas/strokes.hpp"
#include "tools/draw/chart/surface.hpp"
#include "tools/run.hpp"

using namespace quoin;
using namespace quoin::tools;
using quoin::testing::count;
using quoin::testing::WithinAbs;

namespace {

Results solved_case(const std::vector<cases::Variant>& variants) {
  cases::Case source = testing::small_case();
  source.variants = variants;
  return results_of(source, "corner.yaml", {}, {});
}

TEST_CASE("the picture of the inside surface is the golden one") {
  const std::string picture = drawn_surface(testing::results_by_hand()).svg();
  CHECK(testing::is_golden(picture, "surface.svg"));
  CHECK(picture == drawn_surface(testing::results_by_hand()).svg());
}

TEST_CASE("a golden picture of the surface would not pass if one temperature differed") {
  Results results = testing::results_by_hand();
  for (double& temperature : results.variants[1].surface.temperature) temperature += 0.5;
  CHECK(drawn_surface(results).svg() != testing::golden("surface.svg"));
}

TEST_CASE("the picture of the surface names every variant, limit and named place") {
  const std::string picture = drawn_surface(testing::results_by_hand()).svg();
  for (const char* shown : {">as found<", ">dried out<", ">coldest 9.1 °C<", ">dew point 10.6 °C<",
                            ">mould 14.0 °C<", ">the angle of the corner<", ">°C<",
                            ">mm along the surface of hall, from the angle of the corner<"}) {
    CAPTURE(shown);
    CHECK(picture.find(shown) != std::string::npos);
  }
  CHECK(count(picture, ">the wall beside the corner<") == 2);
}

TEST_CASE("a limit that differs between variants says for which it holds") {
  Results results = testing::results_by_hand();
  results.variants.push_back(results.variants[1]);
  results.variants[2].humidity[0].dew_point = 7.0;
  const std::string picture = drawn_surface(results).svg();
  CHECK(picture.find(">dew point 10.6 °C for all but 3<") != std::string::npos);
  CHECK(picture.find(">dew point 7.0 °C for 3<") != std::string::npos);
  CHECK(picture.find(">mould 14.0 °C<") != std::string::npos);
}

TEST_CASE("twelve variants with limits of their own are all named and all drawn differently") {
  Results results = testing::results_by_hand();
  while (results.variants.size() < 12) {
    results.variants.push_back(results.variants[results.variants.size() % 2]);
    AirHumidity& air = results.variants.back().humidity[0];
    air.mould_temperature += 0.11 * static_cast<double>(results.variants.size());
  }
  const Picture picture = drawn_surface(results);
  std::vector<Box> limits;
  for (const Item& item : picture.canvas().items()) {
    const auto* words = std::get_if<Words>(&item);
    if (words == nullptr || words->text.rfind("mould ", 0) != 0) continue;
    limits.push_back(box_of(words->at, words->text, words->lettering));
  }
  CHECK(limits.size() == 11);
  for (std::size_t a = 0; a < limits.size(); ++a) {
    for (std::size_t b = 0; b < a; ++b) CHECK_FALSE(overlap(limits[a], limits[b]));
  }
  for (std::size_t a = 0; a < 12; ++a) {
    for (std::size_t b = 0; b < a; ++b) CHECK(stroke_of_variant(a) != stroke_of_variant(b));
  }
}

TEST_CASE("a curve is the field along the surface from end to end") {
  const SolvedVariant solved = tools::solved(testing::corner_variant("found", 0.0, false), {});
  const std::vector<DevelopedSurface> all = developed_surfaces(solved);
  REQUIRE(all.size() == 1);
  CHECK(all[0].along.front() == 0.0);
  CHECK(all[0].along.back() == WithinAbs{2.0, 1e-9});  // two legs of a metre
  double coldest = 1e9;
  for (std::size_t k = 0; k < all[0].place.size(); ++k) {
    coldest = std::min(coldest, all[0].temperature[k]);
  }
  CHECK(coldest == solved.surface.airs.front().coldest.temperature.value);
}

TEST_CASE("variants with different linings are compared from the place they share") {
  const Results results = solved_case(
      {testing::corner_variant("found", 0.0, false), testing::corner_variant("lined", 0.0, true)});
  const std::vector<ComparedSurface> all = compared_surfaces(results);
  REQUIRE(all.size() == 1);
  CHECK(all[0].origin == "the angle of the corner");
  REQUIRE(all[0].curves.size() == 2);
  for (const ComparedSurface::Curve& curve : all[0].curves) {
    CHECK(curve.origin == WithinAbs{1.0, 1e-9});
  }
  const auto names = named_stretches(results.variants[0].variant, all[0].curves.front().surface);
  REQUIRE(names.size() == 3);
  CHECK(names[1].to - names[1].from == WithinAbs{1.0, 1e-9});
}

TEST_CASE("surfaces without a place in common each count from their start") {
  Results results = testing::results_by_hand();
  results.variants[1].variant.places.clear();
  const std::vector<ComparedSurface> all = compared_surfaces(results);
  REQUIRE(all.size() == 1);
  CHECK(all[0].origin.empty());
  CHECK(drawn_surface(results).svg().find(">mm along the surface of hall<") != std::string::npos);
}

TEST_CASE("rooms that are not in the first variant have a chart of their own") {
  Results results = testing::results_by_hand();
  results.variants[1].variant.spaces[SpaceId(0u)].name = "parlour";
  CHECK(compared_surfaces(results).size() == 2);
  CHECK(drawn_surface(results).svg().find("surface of parlour") != std::string::npos);
}

TEST_CASE("frames are thin lines beside the fabric, and the key says so") {
  Results results = testing::results_by_hand();
  CHECK(drawn_surface(results).svg().find("thin lines") == std::string::npos);
  results.variants[0].surface.physics.is_fabric[RegionId(1u)] = 0;
  const std::string picture = drawn_surface(results).svg();
  CHECK(picture.find("thin lines: frame and glazing") != std::string::npos);
  CHECK(picture.find("stroke-width=\"1.1\"") != std::string::npos);
}

TEST_CASE("a case without an inside has no picture of its surface") {
  Results results = testing::results_by_hand();
  for (SolvedVariant& solved : results.variants) {
    solved.variant.spaces[SpaceId(0u)].is = cases::SpaceKind::unheated;
  }
  CHECK(drawn_surface(results).is_empty());
}

}  // namespace
