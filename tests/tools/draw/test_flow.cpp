// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>
#include <fmt/format.h>

#include "tests/tools/golden.hpp"
#include "tests/tools/small_case.hpp"
#include "tests/tools/xml.hpp"
#include "tools/draw/field/flow.hpp"
#include "tools/run.hpp"

using namespace quoin;
using namespace quoin::tools;
using quoin::testing::count;

namespace {

/// A plain wall a metre high: 0.345 m thick, of two layers.
cases::Variant wall_variant() {
  cases::Variant variant = testing::corner_variant("plain wall", 0.0, false);
  geometry::Wall wall;
  wall.layers = {{RegionId(1u), 0.015}, {RegionId(0u), 0.33}};
  wall.inside = SpaceId(0u);
  wall.outside = SpaceId(1u);
  variant.recipe = wall;
  geometry::Drawing drawing = geometry::drawing_of(wall);
  variant.sheet = std::move(drawing.sheet);
  variant.flanks = std::move(drawing.flanks);
  variant.places = std::move(drawing.places);
  variant.probes.clear();
  return variant;
}

Results results_with(const std::vector<cases::Variant>& variants) {
  cases::Case source = testing::small_case();
  source.variants = variants;
  return results_of(source, "wall.yaml", {}, {});
}

std::string first_picture(const Results& results) {
  return drawn_flow(results.variants.front(), flow_step(results), results.title)
      .noted(results.note)
      .svg();
}

TEST_CASE("the picture of the heat flow through a plain wall is the golden one") {
  const Results results = results_with({wall_variant()});
  CHECK(testing::is_golden(first_picture(results), "flow.svg"));
}

TEST_CASE("a golden picture of the heat flow would not pass if more heat flowed") {
  Results results = results_with({wall_variant()});
  for (auto& air : results.variants.front().heat.cells) {
    for (double& share : air) share *= 1.02;
  }
  CHECK(first_picture(results) != testing::golden("flow.svg"));
}

TEST_CASE("as many flow lines cross a plain wall as its heat has steps") {
  const Results results = results_with({wall_variant()});
  // exact: 17 K over the resistances of the layers, for the heat-flow purpose; a metre of wall
  const double flow = 17.0 / (0.13 + 0.015 / 0.7 + 0.33 / 0.6 + 0.04);
  const double step = flow_step(results);
  const auto lines = static_cast<std::size_t>(flow / step);
  // Each line has an arrow, and so has the sample in the key.
  CHECK(count(first_picture(results), "fill=\"#8c2f00\"") == lines + 1);
  CHECK(lines >= 8);
  CHECK(lines <= 24);
}

TEST_CASE("variants of a case share the flow between two lines, so a lined wall has fewer") {
  const Results results = results_with({testing::corner_variant("as found", 0.1, false),
                                        testing::corner_variant("lined", 0.0, true)});
  const double step = flow_step(results);
  const auto lines = [&](std::size_t v) {
    return count(drawn_flow(results.variants[v], step, "").svg(), "fill=\"#8c2f00\"");
  };
  CHECK(2 * lines(1) < lines(0));
  CHECK(first_picture(results).find(fmt::format("flow {:g} W per metre of height", step)) !=
        std::string::npos);
}

TEST_CASE("without heat flow there is no picture of it") {
  cases::Variant even = wall_variant();
  for (cases::Space& space : even.spaces) space.temperature = 10.0;
  const Results results = results_with({even});
  CHECK(first_picture(results).empty());
}

TEST_CASE("names that are markup, emoji or very long do no harm in pictures of the heat flow") {
  for (const std::string& name : testing::hostile_names()) {
    cases::Variant variant = wall_variant();
    variant.name = name;
    for (cases::Space& space : variant.spaces) space.name = name;
    Results results = results_with({variant});
    results.title = results.note = name;
    const std::string picture = first_picture(results);
    CHECK(testing::is_well_formed(picture));
    CHECK(picture.find("<script") == std::string::npos);
    CHECK(picture.size() < 200000);
  }
}

}  // namespace
