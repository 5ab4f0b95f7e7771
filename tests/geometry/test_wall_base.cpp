// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <string>

#include "geometry/close_up.hpp"
#include "geometry/flaws.hpp"
#include "geometry/recipe.hpp"
#include "tests/geometry/drawn.hpp"
#include "tests/support/within.hpp"

namespace quoin::geometry {
namespace {

using testing::WithinAbs;

constexpr double rounding = 1e-12;
const SpaceId room(0), yard(1), underfloor(2);
const RegionId plaster(0), brick(1), stone(2), flags(3), clay(4), foam(5), slate(6);

/// A one-brick wall with flags on the ground, 150 mm above the ground outside.
WallBase base() {
  WallBase recipe;
  recipe.layers = {{plaster, 0.015}, {brick, 0.225}};
  recipe.foundation = {{brick, 0.225}};
  recipe.footing = stone;
  recipe.floor = {{flags, 0.06}};
  recipe.floor_width = 5.0;
  recipe.ground = clay;
  recipe.inside = room;
  recipe.outside = yard;
  return recipe;
}

WallBase suspended() {
  WallBase recipe = base();
  recipe.beneath = underfloor;
  return recipe;
}

Section section(const WallBase& recipe) { return section_of(drawing_of(recipe).sheet); }

std::string objection_of(const WallBase& recipe) {
  return objection(recipe).value_or("it can be built");
}

}  // namespace

TEST_CASE("a wall base shows wall, floor, foundation, footing and ground where they belong") {
  const Section shows = section(base());
  CHECK(shown(shows, {0.005, 0.5}) == Fill{plaster});
  CHECK(shown(shows, {0.100, 0.5}) == Fill{brick});
  CHECK(shown(shows, {-0.5, 0.5}) == Fill{room});
  CHECK(shown(shows, {0.5, 0.5}) == Fill{yard});
  CHECK(shown(shows, {0.5, -0.1}) == Fill{yard});  // the ground outside lies lower
  CHECK(shown(shows, {0.5, -0.2}) == Fill{clay});
  CHECK(shown(shows, {-0.5, -0.03}) == Fill{flags});
  CHECK(shown(shows, {0.010, -0.03}) == Fill{flags});  // under the plaster, up to the masonry
  CHECK(shown(shows, {-0.5, -0.2}) == Fill{clay});
  CHECK(shown(shows, {0.1, -0.3}) == Fill{brick});
  CHECK(shown(shows, {0.1, -0.55}) == Fill{stone});
  CHECK(shown(shows, {0.1, -0.65}) == Fill{clay});
}

TEST_CASE("a wall base draws without flaws, on the ground and over a void, high and low outside") {
  for (const WallBase& recipe : {base(), suspended()}) {
    for (const double level : {-0.3, 0.0, 0.25}) {
      WallBase changed = recipe;
      changed.ground_level = level;
      changed.edge_insulation = {{foam, 0.05}};
      changed.damp_course = slate;
      changed.course_height = 0.1;
      CAPTURE(level);
      REQUIRE_FALSE(objection(changed));
      const Sheet sheet = drawing_of(changed).sheet;
      CHECK(flaws(sheet, section_of(sheet)).empty());
    }
  }
}

TEST_CASE("the ground is drawn as far as the more demanding of both purposes asks") {
  // Source: ISO 10211, from memory. Half the floor inwards, two and a half floors outwards and
  // down.
  const Section wide = section(base());
  CHECK(wide.x.front() == WithinAbs{-2.5, rounding});
  CHECK(wide.x.back() == WithinAbs{0.24 + 12.5, rounding});
  CHECK(wide.y.front() == WithinAbs{-0.15 - 12.5, rounding});
  // For surface temperatures 3 m down: more than that of a narrow floor.
  WallBase narrow = base();
  narrow.floor_width = 1.0;
  CHECK(section(narrow).y.front() == WithinAbs{-3.15, rounding});
}

TEST_CASE("ground outside above the floor lies against the wall") {
  WallBase recipe = base();
  recipe.ground_level = 0.25;
  const Section shows = section(recipe);
  CHECK(shown(shows, {0.5, 0.2}) == Fill{clay});
  CHECK(shown(shows, {0.5, 0.3}) == Fill{yard});
  CHECK(shown(shows, {-0.5, 0.2}) == Fill{room});
}

TEST_CASE("a suspended floor has a void under it as deep as is said, and the ground under that") {
  WallBase recipe = suspended();
  recipe.void_depth = 0.2;
  const Section shows = section(recipe);
  CHECK(shown(shows, {-0.5, -0.03}) == Fill{flags});
  CHECK(shown(shows, {-0.5, -0.2}) == Fill{underfloor});
  CHECK(shown(shows, {-0.5, -0.3}) == Fill{clay});
  CHECK(shown(shows, {0.010, -0.2}) == Fill{underfloor});  // up to the face of the foundation
}

TEST_CASE("a foundation wider than the wall carries the floor on its ledge") {
  WallBase recipe = base();
  recipe.foundation = {{stone, 0.45}};
  recipe.footing_width = 0.6;
  const Section shows = section(recipe);
  CHECK(shown(shows, {-0.1, -0.03}) == Fill{flags});
  CHECK(shown(shows, {-0.1, -0.3}) == Fill{stone});
  CHECK(shown(shows, {0.2, -0.03}) == Fill{stone});
}

TEST_CASE("insulation of the edge stands on the face of the foundation") {
  WallBase solid = base();
  solid.edge_insulation = {{foam, 0.05}};
  CHECK(shown(section(solid), {-0.01, -0.03}) == Fill{foam});
  CHECK(shown(section(solid), {-0.01, -0.3}) == Fill{foam});
  CHECK(shown(section(solid), {-0.06, -0.3}) == Fill{clay});
  WallBase raised = suspended();
  raised.edge_insulation = {{foam, 0.05}};
  CHECK(shown(section(raised), {-0.01, -0.03}) == Fill{flags});
  CHECK(shown(section(raised), {-0.01, -0.3}) == Fill{foam});
}

TEST_CASE("a damp course is drawn where it has a material, and names the wall in any case") {
  WallBase recipe = base();
  recipe.course_height = 0.15;
  CHECK(shown(section(recipe), {0.1, 0.1515}) == Fill{brick});
  recipe.damp_course = slate;
  CHECK(shown(section(recipe), {0.1, 0.1515}) == Fill{slate});
  CHECK(shown(section(recipe), {0.01, 0.1515}) == Fill{plaster});  // not through the plaster
  const auto places = drawing_of(recipe).places;
  CHECK(std::any_of(places.begin(), places.end(), [](const NamedPlace& place) {
    return place.name == "the wall below the damp course" && place.to.y == 0.15;
  }));
}

TEST_CASE("psi of a wall base takes off wall and floor, by external dimensions from ground level") {
  const auto flanks = drawing_of(base()).flanks;
  REQUIRE(flanks.size() == 2);
  CHECK(flanks[0].internal == WithinAbs{1.0, rounding});
  CHECK(flanks[0].external == WithinAbs{1.15, rounding});
  CHECK(flanks[1].internal == WithinAbs{2.5, rounding});
  CHECK(flanks[1].external == WithinAbs{2.74, rounding});
  REQUIRE(flanks[1].on_ground);
  CHECK(flanks[1].looks == Facing::up);
}

TEST_CASE("over a void psi takes off a suspended floor, the wall from the floor's top") {
  const Drawing drawing = drawing_of(suspended());
  CHECK(drawing.floor_alone.empty());
  CHECK(drawing.heat_sinks_in == underfloor);
  CHECK_FALSE(drawing_of(base()).heat_sinks_in.valid());
  const Flank& floor = drawing.flanks[1];
  CHECK(floor.outside == underfloor);
  REQUIRE(floor.over_void);
  CHECK(floor.over_void->height == WithinAbs{0.15, rounding});
  CHECK(floor.over_void->outside == yard);
  CHECK(floor.over_void->below.wall_thickness == WithinAbs{0.225, rounding});
  CHECK(floor.internal == WithinAbs{2.5, rounding});
  CHECK(floor.external == WithinAbs{2.74, rounding});
  CHECK(drawing.flanks[0].external == WithinAbs{1.0, rounding});
}

TEST_CASE("a void deeper below the ground outside than half a metre has no psi") {
  // Source: ISO 13370, from memory.
  WallBase deep = suspended();
  deep.footing_depth = 1.2;
  deep.void_depth = 0.59;  // under 60 mm of flags, the ground outside 150 mm below them
  CHECK(is_shallow(deep));
  CHECK(drawing_of(deep).flanks[0].external > 0.0);
  deep.void_depth = 0.60;
  CHECK_FALSE(is_shallow(deep));
  for (const Flank& flank : drawing_of(deep).flanks) CHECK(flank.external == 0.0);
}

TEST_CASE("the floor alone has soil in place of wall and footing, and nothing above it") {
  WallBase recipe = base();
  recipe.edge_insulation = {{foam, 0.05}};
  for (const double level : {-0.15, 0.25}) {
    recipe.ground_level = level;
    const Section alone = section_of(drawing_of(recipe).floor_alone);
    CHECK(shown(alone, {0.1, -0.55}) == Fill{clay});
    CHECK(shown(alone, {-0.01, -0.3}) == Fill{clay});
    CHECK(shown(alone, {0.1, 0.1}) == Fill{std::monostate{}});
    CHECK(shown(alone, {-0.5, -0.03}) == Fill{flags});
    CHECK(shown(alone, {0.5, level - 0.05}) == Fill{clay});
    CHECK(shown(alone, {0.5, level + 0.05}) == Fill{yard});
  }
}

TEST_CASE("what a wall base cannot be is objected to, each in its words") {
  const auto objection_where = [](auto change) {
    WallBase recipe = base();
    change(recipe);
    return objection_of(recipe);
  };
  CHECK(objection_of(base()) == "it can be built");
  CHECK(objection_of(suspended()) == "it can be built");
  const auto says = [](const std::string& text, const std::string& words) {
    CAPTURE(text);
    CHECK(text.find(words) != std::string::npos);
  };
  says(objection_where([](WallBase& r) { r.ground_level = -0.7; }), "above the ground outside");
  says(objection_where([](WallBase& r) { r.footing_height = 0.58; }), "into the floor");
  says(objection_where([](WallBase& r) { r.footing_width = 0.2; }), "narrower");
  says(objection_where([](WallBase& r) { r.ground_level = 1.0; }), "as high as the wall");
  says(objection_where([](WallBase& r) { r.void_depth = 0.2; }), "no name");
  says(objection_where([](WallBase& r) { r.damp_course = slate; }), "no height");
  says(objection_where([](WallBase& r) { r.course_height = -0.5; }), "in the wall");
  says(objection_where([](WallBase& r) {
         r.beneath = underfloor;
         r.floor.clear();
       }),
       "needs layers");
  says(objection_where([](WallBase& r) {
         r.beneath = underfloor;
         r.void_depth = 0.6;
       }),
       "as deep as the footing");
  says(objection_where([](WallBase& r) {
         r.beneath = underfloor;
         r.edge_insulation = {{foam, 0.05}};
         r.edge_depth = 0.03;
       }),
       "within the floor");
  says(objection_where([](WallBase& r) { r.edge_insulation = {{foam, 2.52}}; }), "as thick as");
  says(objection_where([](WallBase& r) {
         r.foundation = {{stone, 3.0}};
         r.footing_width = 3.0;
       }),
       "wider than the floor");
}

TEST_CASE("a close-up of a section is the part within a rectangle, its materials the same") {
  const Drawing drawing = drawing_of(base());
  REQUIRE(drawing.close_up);
  const Section all = section_of(drawing.sheet);
  const Section part = close_up(all, *drawing.close_up);
  CHECK(part.x.front() == WithinAbs{-0.8, 1e-9});
  CHECK(part.x.back() < 1.0);
  CHECK(part.y.front() > -1.0);
  CHECK(part.y.back() == all.y.back());
  for (const Point place : {Point{-0.5, 0.5}, {0.1, 0.5}, {-0.5, -0.03}, {0.1, -0.55}, {0.5, -0.2}})
    CHECK(shown(part, place) == shown(all, place));
  CHECK(shown(part, {-2.0, -0.03}) == Fill{std::monostate{}});
}

}  // namespace quoin::geometry
