// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "geometry/flaws.hpp"
#include "geometry/recipe.hpp"
#include "tests/geometry/drawn.hpp"
#include "tests/support/within.hpp"

namespace quoin::geometry {
namespace {

using testing::WithinAbs;

constexpr double rounding = 1e-12;
const SpaceId room(0), yard(1), other(2);
const RegionId plaster(0), brick(1), stone(2), timber(3), board(4), air(5), steel(6);

std::vector<Layer> cavity_wall() {
  return {{plaster, 0.015}, {brick, 0.102}, {air, 0.05, true}, {brick, 0.102}};
}

Head head() {
  Head recipe;
  recipe.layers = {{plaster, 0.015}, {brick, 0.327}};
  recipe.lintel = timber;
  recipe.lintel_depth = 0.217;
  recipe.outer_lintel = stone;
  recipe.frame = timber;
  recipe.inside = room;
  recipe.outside = yard;
  return recipe;
}

Partition partition() {
  Partition recipe;
  recipe.layers = {{brick, 0.327}};
  recipe.lining = {{plaster, 0.01}, {board, 0.04}};
  recipe.partition = {{plaster, 0.015}, {brick, 0.1}, {plaster, 0.015}};
  recipe.on_sides = {{plaster, 0.01}, {board, 0.02}};
  recipe.inside = room;
  recipe.outside = yard;
  return recipe;
}

JoistFloor joist_floor() {
  JoistFloor recipe;
  recipe.layers = {{brick, 0.327}};
  recipe.lining = {{plaster, 0.01}, {board, 0.04}};
  recipe.boards = {{board, 0.022}};
  recipe.joist = timber;
  recipe.ceiling = {{plaster, 0.02}};
  recipe.inside = room;
  recipe.outside = yard;
  return recipe;
}

PorchWall porch_wall() {
  PorchWall recipe;
  recipe.layers = {{plaster, 0.015}, {brick, 0.225}};
  recipe.flank = {{brick, 0.102}};
  recipe.inside = room;
  recipe.porch = other;
  recipe.outside = yard;
  return recipe;
}

ChimneyBreast chimney() {
  ChimneyBreast recipe;
  recipe.layers = {{brick, 0.327}};
  recipe.lining = {{plaster, 0.015}};
  recipe.breast = stone;
  recipe.flue = other;
  recipe.inside = room;
  recipe.outside = yard;
  return recipe;
}

BayCorner bay(double angle) {
  BayCorner recipe;
  recipe.layers = {{plaster, 0.015}, {brick, 0.225}};
  recipe.angle = angle;
  recipe.inside = room;
  recipe.outside = yard;
  return recipe;
}

template <class Kind>
Section section(const Kind& recipe) {
  return section_of(drawing_of(recipe).sheet);
}

template <class Kind>
bool has_place(const Kind& recipe, const std::string& name, Point from) {
  const auto places = drawing_of(recipe).places;
  return std::any_of(places.begin(), places.end(), [&](const NamedPlace& place) {
    return place.name == name && place.from == from;
  });
}

/// Whether a recipe is objected to, with these words.
void check_objection(const Recipe& recipe, const std::string& words) {
  const std::string text = objection(recipe).value_or("it can be built");
  CAPTURE(text);
  CHECK(text.find(words) != std::string::npos);
}

}  // namespace

TEST_CASE("heads, partitions, floors, porch walls, breasts and bays draw without flaws") {
  Head closed = head();
  closed.layers = cavity_wall();
  closed.lintel_depth = 0.1;
  closed.closer = brick;
  Partition between = partition();
  between.beyond = other;
  JoistFloor over = joist_floor();
  over.below = other;
  over.pocket = air;
  ChimneyBreast solid = chimney();
  solid.flue = {};
  for (const Recipe& recipe :
       {Recipe{head()}, Recipe{closed}, Recipe{partition()}, Recipe{between}, Recipe{joist_floor()},
        Recipe{over}, Recipe{porch_wall()}, Recipe{chimney()}, Recipe{solid}, Recipe{bay(135)},
        Recipe{bay(90)}, Recipe{bay(225)}, Recipe{bay(97.3)}}) {
    REQUIRE_FALSE(objection(recipe));
    const Drawing drawing = drawing_of(recipe);
    const Section shows = section_of(drawing.sheet);
    CHECK(flaws(drawing.sheet, shows).empty());
    CHECK(shows.deviation == 0.0);
    CHECK_FALSE(drawing.places.empty());
    CHECK(drawing.thickness > 0.2);
  }
}

TEST_CASE("a head shows both lintels, the frame and the soffit where they belong") {
  Head recipe = head();
  recipe.lining = {{plaster, 0.015}};
  const Section shows = section(recipe);
  CHECK(shown(shows, {0.005, 0.1}) == Fill{plaster});
  CHECK(shown(shows, {0.1, 0.1}) == Fill{timber});
  CHECK(shown(shows, {0.1, 0.3}) == Fill{brick});
  CHECK(shown(shows, {0.3, 0.1}) == Fill{stone});
  CHECK(shown(shows, {0.1, -0.01}) == Fill{plaster});
  CHECK(shown(shows, {0.1, -0.05}) == Fill{room});
  CHECK(shown(shows, {0.2, -0.05}) == Fill{timber});
  CHECK(shown(shows, {0.3, -0.05}) == Fill{yard});
  CHECK(has_place(recipe, "the frame edge", {0.172, -0.015}));
}

TEST_CASE("a cavity lies open at the opening, or is closed there as deep as is said") {
  Head recipe = head();
  recipe.layers = cavity_wall();
  recipe.lintel_depth = 0.08;
  recipe.lintel_height = 0.05;
  recipe.lintel_setback = 0.17;
  recipe.outer_lintel = {};
  CHECK(shown(section(recipe), {0.14, 0.03}) == Fill{air});
  recipe.closer = stone;
  recipe.closer_depth = 0.075;
  CHECK(shown(section(recipe), {0.14, 0.03}) == Fill{stone});
  CHECK(shown(section(recipe), {0.14, 0.08}) == Fill{air});
  CHECK(shown(section(recipe), {0.14, 0.7}) == Fill{air});

  Reveal jamb;
  jamb.layers = cavity_wall();
  jamb.frame = timber;
  jamb.inside = room;
  jamb.outside = yard;
  CHECK(shown(section(jamb), {-0.03, -0.14}) == Fill{air});
  jamb.closer = stone;
  CHECK(shown(section(jamb), {-0.03, -0.14}) == Fill{stone});
  CHECK(shown(section(jamb), {-0.2, -0.14}) == Fill{air});
  Sill sill;
  sill.layers = cavity_wall();
  sill.frame = timber;
  sill.sill = stone;
  sill.inside = room;
  sill.outside = yard;
  CHECK(shown(section(sill), {0.14, -0.03}) == Fill{air});
  sill.closer = steel;
  CHECK(shown(section(sill), {0.14, -0.03}) == Fill{steel});
  sill.layers = {{brick, 0.33}};
  check_objection(sill, "has none");
}

TEST_CASE("what a head cannot be is objected to") {
  Head recipe = head();
  recipe.lintel_depth = 0.24;
  check_objection(recipe, "the lintel stands into the room");
  recipe = head();
  recipe.lintel_setback = 0.0;
  check_objection(recipe, "outer lintel needs room");
  recipe = head();
  recipe.lintel_height = 1.03;
  check_objection(recipe, "as high as the wall");
  recipe.lintel_height = 1.02;
  CHECK_FALSE(objection(Recipe{recipe}));
  recipe = head();
  recipe.frame_setback = 0.3;
  check_objection(recipe, "the frame stands into the room");
  recipe = head();
  recipe.lining = {{board, 0.1}};
  check_objection(recipe, "whole frame");
  recipe = head();
  recipe.closer = stone;
  check_objection(recipe, "has none");
  recipe.layers = cavity_wall();
  recipe.lintel_depth = 0.1;
  recipe.closer_depth = 1.0;
  check_objection(recipe, "as long as the wall");
}

TEST_CASE("lining and return meet in the angle, face on face and board on board") {
  const Section shows = section(partition());
  for (const double hand : {-1.0, 1.0}) {
    const auto at = [&](double from_partition, double from_wall) {
      return shown(shows, {hand * (0.065 + from_partition), from_wall});
    };
    CHECK(at(0.5, 0.02) == Fill{board});  // lining
    CHECK(at(0.5, 0.045) == Fill{plaster});
    CHECK(at(0.01, 0.2) == Fill{board});  // return
    CHECK(at(0.025, 0.2) == Fill{plaster});
    CHECK(at(0.01, 0.02) == Fill{board});  // in the angle
    CHECK(at(0.025, 0.045) == Fill{plaster});
    CHECK(at(0.025, 0.02) == Fill{board});
    CHECK(at(0.035, 0.06) == Fill{room});
    CHECK(at(0.01, 0.36) == Fill{room});      // beyond the return
    CHECK(at(-0.01, 0.02) == Fill{plaster});  // of the partition
  }
  CHECK(shown(shows, {0, 0.5}) == Fill{brick});
  CHECK(shown(shows, {0, -0.1}) == Fill{brick});
  CHECK(has_place(partition(), "the angle at the partition", {0.065 + 0.03, 0.05}));
  CHECK(has_place(partition(), "the end of the return", {-0.065, 0.35}));
}

TEST_CASE("a partition may reach into the outside wall and part two airs") {
  Partition recipe = partition();
  recipe.partition = {{stone, 0.2}};
  recipe.bond = 0.1;
  recipe.beyond = other;
  const Section shows = section(recipe);
  CHECK(shown(shows, {0, -0.05}) == Fill{stone});
  CHECK(shown(shows, {0, -0.15}) == Fill{brick});
  CHECK(shown(shows, {-0.5, 0.5}) == Fill{room});
  CHECK(shown(shows, {0.5, 0.5}) == Fill{other});
  CHECK(drawing_of(recipe).flanks.front().external == 0.0);  // two airs inside: no psi
  CHECK(drawing_of(partition()).flanks.front().external ==
        WithinAbs{drawing_of(partition()).flanks.front().internal + 0.13, rounding});
  recipe.bond = 0.328;
  check_objection(recipe, "into the open");
  recipe = partition();
  recipe.length = 0.35;
  check_objection(recipe, "make it longer");
  recipe = partition();
  recipe.wall = 0.03;
  check_objection(recipe, "covers all");
}

TEST_CASE("a joist bears in its pocket, and its end is a place where timber may rot") {
  JoistFloor recipe = joist_floor();
  recipe.pocket = air;
  const Section shows = section(recipe);
  CHECK(shown(shows, {-0.5, 0.01}) == Fill{board});
  CHECK(shown(shows, {-0.5, -0.1}) == Fill{timber});
  CHECK(shown(shows, {0.05, -0.1}) == Fill{timber});
  CHECK(shown(shows, {0.11, -0.1}) == Fill{air});
  CHECK(shown(shows, {0.15, -0.1}) == Fill{brick});
  CHECK(shown(shows, {-0.5, -0.21}) == Fill{plaster});
  CHECK(shown(shows, {-0.02, 0.5}) == Fill{board});
  CHECK(shown(shows, {-0.02, -0.5}) == Fill{board});
  const auto ends = drawing_of(recipe).timber_ends;
  REQUIRE(ends.size() == 1);
  CHECK(ends.front().from == Point{0.1, -0.1});
  recipe.bearing = 0;
  recipe.pocket = {};
  CHECK(drawing_of(recipe).timber_ends.empty());
}

TEST_CASE("a lining that stops short leaves the wall bare beside the floor") {
  JoistFloor recipe = joist_floor();
  recipe.lining_gap = 0.2;
  const Section shows = section(recipe);
  CHECK(shown(shows, {-0.02, 0.1}) == Fill{room});
  CHECK(shown(shows, {-0.02, 0.3}) == Fill{board});
  CHECK(shown(shows, {-0.02, -0.3}) == Fill{room});
  CHECK(has_place(recipe, "the angle above the floor", {0, 0.022}));
}

TEST_CASE("what a floor cannot be is objected to") {
  JoistFloor recipe = joist_floor();
  recipe.bearing = 0.328;
  check_objection(recipe, "into the open");
  recipe.bearing = 0.31;
  CHECK_FALSE(objection(Recipe{recipe}));
  recipe.pocket = air;
  check_objection(recipe, "into the open");
  recipe.bearing = 0;
  check_objection(recipe, "bears in the wall");
  recipe = joist_floor();
  recipe.wall = 0.5;
  recipe.lining_gap = 0.5;
  check_objection(recipe, "nothing of the lining");
}

TEST_CASE("a porch wall has the open on the left of the flank wall and the porch on its right") {
  const Section shows = section(porch_wall());
  CHECK(shown(shows, {0.05, 0.05}) == Fill{room});
  CHECK(shown(shows, {-0.5, -0.5}) == Fill{yard});
  CHECK(shown(shows, {0.05, -0.5}) == Fill{brick});
  CHECK(shown(shows, {0.5, -0.5}) == Fill{other});
  const auto flanks = drawing_of(porch_wall()).flanks;
  REQUIRE(flanks.size() == 2);
  CHECK(flanks[0].outside == yard);
  CHECK(flanks[1].outside == other);
  CHECK(flanks[0].external == 0.0);
}

TEST_CASE("a breast stands before the wall, lined all around, with its flue behind the cover") {
  const Section shows = section(chimney());
  CHECK(shown(shows, {0, 0.30}) == Fill{stone});
  CHECK(shown(shows, {0, 0.1}) == Fill{other});
  CHECK(shown(shows, {0.2, 0.1}) == Fill{stone});
  CHECK(shown(shows, {0, 0.36}) == Fill{plaster});
  CHECK(shown(shows, {0.66, 0.2}) == Fill{plaster});
  CHECK(shown(shows, {1.0, 0.01}) == Fill{plaster});
  CHECK(shown(shows, {1.0, 0.02}) == Fill{room});
  CHECK(shown(shows, {0, -0.1}) == Fill{brick});
  ChimneyBreast recipe = chimney();
  recipe.flue_depth = 0.6;
  check_objection(recipe, "into the open");
  recipe = chimney();
  recipe.flue_width = 1.3;
  check_objection(recipe, "as wide as the breast");
}

TEST_CASE("half a bay corner is cut through its angle, whichever way it turns") {
  const Section external = section(bay(90));
  CHECK(external.x.front() == WithinAbs{-0.24, 1e-9});  // at right angles as far out as deep
  CHECK(drawing_of(bay(90)).flanks.front().external == WithinAbs{1.24, rounding});
  CHECK(drawing_of(bay(90)).flanks.front().internal == WithinAbs{1.0, rounding});
  const Flank internal = drawing_of(bay(270)).flanks.front();
  CHECK(internal.internal == WithinAbs{1.24, rounding});
  CHECK(internal.external == WithinAbs{1.0, rounding});
  CHECK(drawing_of(bay(135)).halves == 2);
}

}  // namespace quoin::geometry
