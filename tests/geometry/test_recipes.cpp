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
const SpaceId room(0), yard(1);
const RegionId plaster(0), brick(1), render(2), frame(3), board(4);

std::vector<Layer> layers() { return {{plaster, 0.015}, {brick, 0.33}, {render, 0.02}}; }

Wall wall() {
  Wall recipe;
  recipe.layers = layers();
  recipe.inside = room;
  recipe.outside = yard;
  return recipe;
}

Corner corner(Turn turn) {
  Corner recipe;
  recipe.layers = layers();
  recipe.turn = turn;
  recipe.leg = 1.2;
  recipe.inside = room;
  recipe.outside = yard;
  return recipe;
}

Reveal reveal() {
  Reveal recipe;
  recipe.layers = layers();
  recipe.frame = frame;
  recipe.inside = room;
  recipe.outside = yard;
  recipe.wall = 1.1;
  return recipe;
}

const NamedPlace& place(const Drawing& drawing, const std::string& name) {
  const auto found = std::find_if(drawing.places.begin(), drawing.places.end(),
                                  [&](const NamedPlace& named) { return named.name == name; });
  REQUIRE(found != drawing.places.end());
  return *found;
}

}  // namespace

TEST_CASE("every recipe draws a sheet without flaws") {
  Reveal lined = reveal();
  lined.lining = {{plaster, 0.01}, {board, 0.03}};
  for (const Recipe& recipe : {Recipe{wall()}, Recipe{corner(Turn::external)},
                               Recipe{corner(Turn::internal)}, Recipe{reveal()}, Recipe{lined}}) {
    const Sheet sheet = drawing_of(recipe).sheet;
    CHECK(flaws(sheet, section_of(sheet)).empty());
    CHECK_FALSE(objection(recipe));
  }
}

TEST_CASE("a wall shows its layers from the inside out, inside on the left") {
  const Section section = section_of(drawing_of(wall()).sheet);
  CHECK(shown(section, {-0.05, 0.5}) == Fill{room});
  CHECK(shown(section, {0.010, 0.5}) == Fill{plaster});
  CHECK(shown(section, {0.100, 0.5}) == Fill{brick});
  CHECK(shown(section, {0.350, 0.5}) == Fill{render});
  CHECK(shown(section, {0.400, 0.5}) == Fill{yard});
  CHECK(section.y == std::vector<double>{0, 1});
}

TEST_CASE("a wall is one flank without lengths, for nothing meets there") {
  const Drawing drawing = drawing_of(wall());
  REQUIRE(drawing.flanks.size() == 1);
  CHECK(drawing.flanks.front().external == 0.0);
  CHECK(drawing.thickness == WithinAbs{0.365, rounding});
}

TEST_CASE("an external corner is wrapped by the outside, its layers all around the room") {
  const Section section = section_of(drawing_of(corner(Turn::external)).sheet);
  CHECK(shown(section, {-0.05, 0.5}) == Fill{yard});
  CHECK(shown(section, {0.5, -0.05}) == Fill{yard});
  CHECK(shown(section, {0.010, 0.010}) == Fill{render});
  CHECK(shown(section, {0.010, 0.9}) == Fill{render});
  CHECK(shown(section, {0.9, 0.2}) == Fill{brick});
  CHECK(shown(section, {0.355, 0.9}) == Fill{plaster});
  CHECK(shown(section, {0.9, 0.355}) == Fill{plaster});
  CHECK(shown(section, {0.37, 0.37}) == Fill{room});
  CHECK(section.x.back() == WithinAbs{0.365 + 1.2, rounding});
}

TEST_CASE("an internal corner is wrapped by the room, its layers in the same order") {
  const Section section = section_of(drawing_of(corner(Turn::internal)).sheet);
  CHECK(shown(section, {-0.05, 0.5}) == Fill{room});
  CHECK(shown(section, {0.010, 0.9}) == Fill{plaster});
  CHECK(shown(section, {0.355, 0.9}) == Fill{render});
  CHECK(shown(section, {0.37, 0.37}) == Fill{yard});
}

TEST_CASE("the lengths of a corner differ by twice its thickness between the three dimensions") {
  const Flank out = drawing_of(corner(Turn::external)).flanks.front();
  CHECK(out.internal == WithinAbs{2.4, rounding});
  CHECK(out.overall_internal == WithinAbs{2.4, rounding});
  CHECK(out.external == WithinAbs{2.4 + 2 * 0.365, rounding});
  const Flank in = drawing_of(corner(Turn::internal)).flanks.front();
  CHECK(in.internal == WithinAbs{2.4 + 2 * 0.365, rounding});
  CHECK(in.external == WithinAbs{2.4, rounding});
}

TEST_CASE("the named places of a corner lie on the surface of the room") {
  const NamedPlace angle = place(drawing_of(corner(Turn::external)), "the angle of the corner");
  CHECK(angle.from.x == WithinAbs{0.365, rounding});
  CHECK(angle.from.y == WithinAbs{0.365, rounding});
  const NamedPlace inner = place(drawing_of(corner(Turn::internal)), "the angle of the corner");
  CHECK(inner.from == Point{0, 0});
}

TEST_CASE("legs reach to a cut plane one metre or three thicknesses away where not given") {
  Corner recipe = corner(Turn::external);
  recipe.leg.reset();
  CHECK(drawing_of(recipe).flanks.front().internal == WithinAbs{2 * 3 * 0.365, rounding});
  recipe.layers = {{brick, 0.2}};
  CHECK(drawing_of(recipe).flanks.front().internal == WithinAbs{2.0, rounding});
}

TEST_CASE("a reveal shows wall, opening, frame and both airs where they belong") {
  const Section section = section_of(drawing_of(reveal()).sheet);
  CHECK(shown(section, {-0.5, 0.05}) == Fill{room});
  CHECK(shown(section, {0.05, -0.05}) == Fill{room});  // in the opening, before the frame
  CHECK(shown(section, {-0.5, -0.010}) == Fill{plaster});
  CHECK(shown(section, {-0.5, -0.2}) == Fill{brick});
  CHECK(shown(section, {-0.5, -0.355}) == Fill{render});
  CHECK(shown(section, {0.05, -0.365 + 0.1 + 0.035}) == Fill{frame});
  CHECK(shown(section, {0.05, -0.365 + 0.05}) == Fill{yard});  // the outer part of the opening
  CHECK(shown(section, {-0.5, -0.4}) == Fill{yard});
  CHECK(section.x.front() == WithinAbs{-1.1, rounding});
  CHECK(section.x.back() == WithinAbs{0.1, rounding});
}

TEST_CASE("a lining covers the reveal from frame to arris, its face towards the room first") {
  Reveal recipe = reveal();
  recipe.lining = {{plaster, 0.01}, {board, 0.03}};
  const Section section = section_of(drawing_of(recipe).sheet);
  CHECK(shown(section, {0.035, -0.05}) == Fill{plaster});
  CHECK(shown(section, {0.015, -0.05}) == Fill{board});
  CHECK(shown(section, {0.05, -0.05}) == Fill{room});
  CHECK(shown(section, {0.015, -0.365 + 0.135}) == Fill{frame});
  const Drawing drawing = drawing_of(recipe);
  CHECK(place(drawing, "the frame edge").from.x == WithinAbs{0.04, rounding});
  CHECK(place(drawing, "the arris of the reveal").from.x == WithinAbs{0.04, rounding});
}

TEST_CASE("the flanks of a reveal are wall and frame, and together as long as the section") {
  Reveal recipe = reveal();
  recipe.lining = {{board, 0.03}};
  const Drawing drawing = drawing_of(recipe);
  REQUIRE(drawing.flanks.size() == 2);
  const Flank& wall_flank = drawing.flanks[0];
  const Flank& frame_flank = drawing.flanks[1];
  CHECK(wall_flank.internal + frame_flank.internal == WithinAbs{1.2, rounding});
  CHECK(wall_flank.external + frame_flank.external == WithinAbs{1.2, rounding});
  CHECK(wall_flank.internal == WithinAbs{1.13, rounding});
  CHECK(wall_flank.external == WithinAbs{1.1, rounding});
}

TEST_CASE("the frame edge lies where frame and reveal meet, on the room's side") {
  const NamedPlace edge = place(drawing_of(reveal()), "the frame edge");
  CHECK(edge.from.x == WithinAbs{0, rounding});
  CHECK(edge.from.y == WithinAbs{-0.365 + 0.17, rounding});
}

TEST_CASE("a frame that stands into the room is objected to, one that is flush is not") {
  Reveal recipe = reveal();
  recipe.frame_setback = 0.365 - 0.07;
  CHECK_FALSE(objection(recipe));
  recipe.frame_setback += 0.001;
  REQUIRE(objection(recipe));
  CHECK(objection(recipe)->find("into the room") != std::string::npos);
}

TEST_CASE("a lining without a reveal to line, or wider than the frame, is objected to") {
  Reveal flush = reveal();
  flush.frame_setback = 0.365 - 0.07;
  flush.lining = {{board, 0.02}};
  REQUIRE(objection(flush));
  CHECK(objection(flush)->find("flush") != std::string::npos);
  Reveal wide = reveal();
  wide.lining = {{board, 0.1}};
  REQUIRE(objection(wide));
  CHECK(objection(wide)->find("whole frame") != std::string::npos);
}

TEST_CASE("a frame flush with the outside leaves no outer reveal") {
  Reveal recipe = reveal();
  recipe.frame_setback = 0;
  const Section section = section_of(drawing_of(recipe).sheet);
  CHECK(shown(section, {0.05, -0.36}) == Fill{frame});
  CHECK(flaws(drawing_of(recipe).sheet, section).empty());
}

}  // namespace quoin::geometry
