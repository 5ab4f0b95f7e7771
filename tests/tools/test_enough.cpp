// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <string>
#include <vector>

#include "tests/support/within.hpp"
#include "tests/tools/small_case.hpp"
#include "tools/enough.hpp"
#include "tools/output/report/parts.hpp"
#include "tools/redrawn.hpp"
#include "tools/run.hpp"

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
}

}  // namespace quoin::tools
