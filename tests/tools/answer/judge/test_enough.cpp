// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "tests/support/within.hpp"
#include "tests/tools/small_case.hpp"
#include "tools/answer/ask/redrawn.hpp"
#include "tools/answer/judge/enough.hpp"
#include "tools/answer/run.hpp"
#include "tools/output/report/parts.hpp"

namespace quoin::tools {
namespace {

using testing::WithinAbs;
using Kind = Threshold::Kind;

constexpr double damp = 0.1;  // m3/m3: 0.4 of the 0.25 that the test brick holds

WhatIsEnough answer(const cases::Variant& variant) {
  cases::Variant first = variant;
  first.enough = {};
  SolvedVariant solution = solved(first, {});
  solution.variant.enough = variant.enough;
  return what_is_enough(solution, {});
}

/// A corner judged by one factor.
cases::Variant corner(double moisture, bool lined, double factor) {
  cases::Variant variant = testing::corner_variant("corner", moisture, lined);
  variant.criteria = {{"fRsi", cases::FactorThreshold{factor, {}}}};
  return variant;
}

Threshold thickness_over(double moisture) {
  cases::Variant variant = corner(moisture, true, 0.7);
  variant.enough.thickness = cases::ThicknessRange{"lining", 0.002, 0.2};
  return *answer(variant).each.at(0).thickness;
}

Threshold moisture_of(const cases::Variant& asked) {
  cases::Variant variant = asked;
  variant.enough.moisture_of = "wall brick";
  return *answer(variant).each.at(0).moisture;
}

/// Solved by hand: an answer for one criterion in the hall, without a section.
SolvedVariant answered(const std::string& name, const std::string& layer, double thickness,
                       const std::string& material = "", double moisture = 0.0) {
  SolvedVariant one;
  one.variant.name = name;
  cases::Space hall;
  hall.name = "hall";
  one.variant.spaces.add(hall);
  EnoughFor enough;
  enough.criterion = "mould";
  enough.space = geometry::SpaceId(0u);
  enough.highest_humidity = 0.6;
  if (!layer.empty()) {
    one.variant.enough.thickness = cases::ThicknessRange{layer, 0.001, 0.1};
    enough.thickness = Threshold{Kind::found, thickness};
  }
  if (!material.empty()) {
    one.variant.enough.moisture_of = material;
    enough.moisture = Threshold{Kind::found, moisture};
  }
  one.enough = {enough};
  return one;
}

report::Table enough_table(const Results& results) {
  return std::get<report::Table>(report::enough_part(results).at(0));
}

/// From the first column that answers.
std::vector<std::string> headings(const report::Table& table) {
  std::vector<std::string> all;
  for (std::size_t c = table.keys; c < table.columns.size(); ++c)
    all.push_back(table.columns[c].heading);
  return all;
}

std::vector<std::string> words(const report::Table& table, std::size_t row) {
  std::vector<std::string> all;
  for (std::size_t c = table.keys; c < table.columns.size(); ++c)
    all.push_back(report::text_of(table.rows[row][c]));
  return all;
}

}  // namespace

TEST_CASE("no thickness of insulation is enough over masonry wetter than damp") {
  CHECK(thickness_over(0.25).kind == Kind::dry_first);
  CHECK(thickness_over(damp).kind == Kind::found);  // the twin
}

TEST_CASE("the thickness told holds when solved and a tenth of a millimetre less fails") {
  cases::Variant variant = corner(0.0, true, 0.7);
  variant.enough.thickness = cases::ThicknessRange{"lining", 0.002, 0.2};
  const Threshold told = *answer(variant).each.at(0).thickness;
  REQUIRE(told.kind == Kind::found);
  const auto holds = [&](double thickness) {
    return solved(*with_thickness(variant, "lining", thickness), {}).verdicts.at(0).holds;
  };
  CHECK(holds(told.value));
  CHECK_FALSE(holds(told.value - 1e-4));
  CHECK(told.until == 0.2);
  CHECK(holds(told.until));
}

TEST_CASE("where more of a lining cools another place the answer ends there or says so") {
  // A lining of the wall alone: the bare reveal gets colder the thicker it is.
  cases::Variant variant = testing::reveal_variant();
  auto& reveal = std::get<geometry::Reveal>(*variant.recipe);
  reveal.layers.insert(reveal.layers.begin(), {RegionId(2u), 0.01});
  reveal.lining = {{RegionId(1u), 0.015}};
  cases::show(geometry::drawing_of(reveal), variant);
  variant.enough.thickness = cases::ThicknessRange{"lining", 0.001, 0.1};
  const auto factor_with = [&](double thickness) {
    return solved(*with_thickness(variant, "lining", thickness), {})
        .surface.airs.front()
        .coldest.factor.value;
  };
  const double thin = factor_with(0.001), thick = factor_with(0.1);
  REQUIRE(thin > thick + 0.01);
  const auto asked = [&](double threshold) {
    variant.criteria = {{"fRsi", cases::FactorThreshold{threshold, {}}}};
    return *answer(variant).each.at(0).thickness;
  };
  const double middle = (thin + thick) / 2;
  const Threshold ends = asked(middle);
  CHECK(ends.kind == Kind::up_to);
  CHECK(ends.value == 0.001);
  CHECK(factor_with(ends.until) >= middle);
  CHECK(factor_with(ends.until + 1e-4) < middle);
  const Threshold never = asked(0.9);
  CHECK(never.kind == Kind::holds_never);
  CHECK(never.more == Threshold::More::harm);
  CHECK(asked(0.1).kind == Kind::holds_always);  // the twin
}

TEST_CASE("a material that is a layer in several lists is said to be told for each") {
  cases::Variant variant = testing::reveal_variant();
  auto& reveal = std::get<geometry::Reveal>(*variant.recipe);
  reveal.layers.insert(reveal.layers.begin(), {RegionId(2u), 0.01});
  cases::show(geometry::drawing_of(reveal), variant);
  variant.criteria = {{"fRsi", cases::FactorThreshold{0.7, {}}}};
  variant.enough.thickness = cases::ThicknessRange{"lining", 0.005, 0.05};
  const WhatIsEnough both = answer(variant);
  REQUIRE(both.warnings.size() == 1);
  CHECK(both.warnings[0].find("a layer 2 times, in layers and in lining") != std::string::npos);
}

TEST_CASE("insulated masonry may be no wetter than damp, bare masonry may be saturated") {
  const Threshold insulated = moisture_of(corner(0.25, true, 0.2));
  CHECK(insulated.kind == Kind::up_to_damp);
  CHECK(insulated.value == WithinAbs{damp, 1e-12});
  CHECK(moisture_of(corner(0.25, false, 0.2)).kind == Kind::holds_always);
  CHECK(moisture_of(corner(0.25, true, 0.99)).kind == Kind::holds_never);
}

TEST_CASE("a limit that cannot be built is tried as far as it can be, and it is said") {
  cases::Variant variant = testing::reveal_variant();
  variant.criteria = {{"fRsi", cases::FactorThreshold{0.2, {}}}};
  constexpr double too_thick = 1.0;
  REQUIRE_FALSE(with_thickness(variant, "lining", too_thick));
  variant.enough.thickness = cases::ThicknessRange{"lining", 0.01, too_thick};
  const WhatIsEnough cut_short = answer(variant);
  REQUIRE(cut_short.each.at(0).thickness);
  CHECK(cut_short.each[0].thickness->kind == Kind::holds_always);
  REQUIRE(cut_short.warnings.size() == 1);
  CHECK(cut_short.warnings[0].find("can be built here") != std::string::npos);

  variant.criteria = {{"fRsi", cases::FactorThreshold{0.99, {}}}};
  const Threshold most = *answer(variant).each.at(0).thickness;
  REQUIRE(most.kind == Kind::holds_never);
  CHECK(with_thickness(variant, "lining", most.value));
  CHECK_FALSE(with_thickness(variant, "lining", most.value + 0.002));

  variant.enough.thickness = cases::ThicknessRange{"lining", 0.01, 0.02};
  CHECK(answer(variant).warnings.empty());  // the twin: all of it can be built
}

TEST_CASE("what has no layer to change is said, not left blank") {
  cases::Variant variant = corner(0.0, true, 0.7);
  variant.enough.thickness = cases::ThicknessRange{"lining", 0.002, 0.2};
  variant.recipe.reset();
  const WhatIsEnough sheet = answer(variant);
  CHECK_FALSE(sheet.each.at(0).thickness);
  REQUIRE(sheet.warnings.size() == 1);
  CHECK(sheet.warnings[0].find("a sheet has no layers") != std::string::npos);

  cases::Variant frame = testing::reveal_variant();
  frame.enough.thickness = cases::ThicknessRange{"frame timber", 0.01, 0.02};
  const WhatIsEnough other = answer(frame);
  REQUIRE(other.warnings.size() == 1);
  CHECK(other.warnings[0].find("no layer of the recipe") != std::string::npos);

  // A variant before the lining needs no word.
  cases::Variant before = corner(0.0, false, 0.7);
  before.enough.thickness = cases::ThicknessRange{"lining", 0.002, 0.2};
  CHECK(answer(before).warnings.empty());
}

TEST_CASE("each layer asked about has a column of its own, whichever variant asks first") {
  Results results;
  results.variants = {answered("as found", "", 0.0), answered("lined", "wood fibre", 0.0361),
                      answered("other", "calcium silicate", 0.06, "brick", 0.0901)};
  const report::Table table = enough_table(results);
  const std::string room = "or the room from, no moisture added";
  CHECK(headings(table) == std::vector<std::string>{"humidity up to", room, "or wood fibre from",
                                                    "or calcium silicate from", "or brick up to"});
  REQUIRE(table.rows.size() == 3);
  CHECK(words(table, 0) == std::vector<std::string>{"60 %", "–", "–", "–", "–"});
  CHECK(words(table, 1) == std::vector<std::string>{"60 %", "–", "37 mm", "–", "–"});
  CHECK(words(table, 2) == std::vector<std::string>{"60 %", "–", "–", "60 mm", "9.0 vol-%"});

  results.variants = {answered("lined", "wood fibre", 0.036), answered("more", "wood fibre", 0.05)};
  CHECK(headings(enough_table(results)).size() == 3);  // the twin: the same layer, one column
}

TEST_CASE("what is withheld and what ends at damp are words of their own") {
  Results results;
  results.variants = {answered("lined", "wood fibre", 0.0, "brick", damp)};
  results.variants[0].enough[0].thickness->kind = Kind::dry_first;
  results.variants[0].enough[0].moisture->kind = Kind::up_to_damp;
  const report::Table table = enough_table(results);
  CHECK(words(table, 0)[2] == "dry first");
  CHECK(words(table, 0)[3] == "10.0 vol-%, damp");

  const auto cell = [&](Threshold threshold) {
    results.variants[0].enough[0].thickness = threshold;
    return words(enough_table(results), 0)[2];
  };
  using More = Threshold::More;
  CHECK(cell({Kind::between, 0.0201, 0.0449}) == "21 to 44 mm only");
  CHECK(cell({Kind::up_to, 0.005, 0.0123}) == "5 to 12 mm only");
  CHECK(cell({Kind::between, 0.0201, 0.0205}) == "20.1 to 20.5 mm only");
  CHECK(cell({Kind::holds_never, 0.08, 0.08, More::helps}) == "not even 80 mm");
  CHECK(cell({Kind::holds_never, 0.01, 0.01, More::harm}) == "none: more does harm");
}

}  // namespace quoin::tools
