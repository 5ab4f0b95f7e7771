// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
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
const RegionId plaster(0), brick(1), stone(2), timber(3), ground(4), air(5);

/// A one-and-a-half-brick wall, 342 mm with its plaster; a frame from 172 to 242 mm below its face.
template <class Kind>
Kind window() {
  Kind recipe;
  recipe.layers = {{plaster, 0.015}, {brick, 0.327}};
  recipe.frame = timber;
  recipe.inside = room;
  recipe.outside = yard;
  return recipe;
}

Reveal reveal() { return window<Reveal>(); }

Head head() {
  Head recipe = window<Head>();
  recipe.lintel = timber;
  recipe.lintel_depth = 0.217;
  return recipe;
}

Sill sill() {
  Sill recipe = window<Sill>();
  recipe.sill = stone;
  return recipe;
}

template <class Kind>
Kind with_sub_frame(Kind recipe) {
  recipe.sub_frame = {ground, 0.04, 0.1, 0.08};  // from 162 to 262 mm
  return recipe;
}

template <class Kind>
Section section(const Kind& recipe) {
  return section_of(drawing_of(recipe).sheet);
}

std::string objection_of(const Recipe& recipe) {
  return objection(recipe).value_or("it can be built");
}

void check_objection(const Recipe& recipe, const std::string& words) {
  CHECK(objection_of(recipe).find(words) != std::string::npos);
}

template <class Kind>
Point place(const Kind& recipe, const std::string& name) {
  for (const NamedPlace& place : drawing_of(recipe).places) {
    if (place.name == name) return place.from;
  }
  FAIL("no place ", name);
  return {};
}

template <class Kind>
void check_place(const Kind& recipe, const std::string& name, Point expected) {
  CHECK(place(recipe, name).x == WithinAbs{expected.x, rounding});
  CHECK(place(recipe, name).y == WithinAbs{expected.y, rounding});
}

template <class Kind>
bool has_place(const Kind& recipe, const std::string& name) {
  const auto places = drawing_of(recipe).places;
  return std::any_of(places.begin(), places.end(),
                     [&](const NamedPlace& place) { return place.name == name; });
}

}  // namespace

TEST_CASE("jambs, sills and heads draw without flaws, splayed, lined, rebated, with a sub-frame") {
  const auto check = [](auto recipe) {
    for (const double splay : {0.0, 0.09}) {
      for (const double lining : {0.0, 0.02, 0.06}) {
        for (const double setback : {-1.0, 0.06, 0.13}) {
          auto changed = recipe;
          changed.splay = splay;
          if (lining > 0) changed.lining = {{plaster, lining}};
          if (setback >= 0) changed.sub_frame = {ground, 0.04, 0.05, setback};
          CAPTURE(splay);
          CAPTURE(lining);
          CAPTURE(setback);
          REQUIRE(objection_of(changed) == "it can be built");
          const Sheet sheet = drawing_of(changed).sheet;
          CHECK(flaws(sheet, section_of(sheet)).empty());
          CHECK(section_of(sheet).deviation == 0.0);
        }
      }
    }
  };
  Reveal jamb = reveal();
  Head top = head();
  check(jamb);
  check(top);
  check(sill());
  jamb.rebate = 0.05;
  top.rebate = 0.05;
  check(jamb);
  check(top);
  top.outer_lintel = stone;
  check(top);
}

TEST_CASE("a splayed head rises towards the room and cuts its lintel, a splayed sill falls") {
  Head top = head();
  top.splay = 0.1;
  CHECK(shown(section(top), {0.01, 0.05}) == Fill{room});
  CHECK(shown(section(top), {0.05, 0.12}) == Fill{timber});  // what is left of the lintel
  CHECK(shown(section(top), {0.1, 0.15}) == Fill{timber});
  CHECK(place(top, "the edge of the soffit") == Point{0, 0.1});
  CHECK(drawing_of(top).flanks[0].internal == WithinAbs{1.026 - 0.1, rounding});
  CHECK(drawing_of(top).flanks[0].external == WithinAbs{1.026, rounding});
  Sill foot = sill();
  foot.splay = 0.1;
  CHECK(shown(section(foot), {0.01, -0.05}) == Fill{room});
  CHECK(shown(section(foot), {0.1, -0.15}) == Fill{brick});
  CHECK(place(foot, "the edge of the board") == Point{0, -0.1});
}

TEST_CASE("the lining of a splayed soffit follows the slope at its own thickness") {
  Head top = head();
  top.splay = 0.172;  // as far as the soffit is deep: 45 degrees
  top.lintel_height = 0.3;
  top.lining = {{plaster, 0.02}};
  const double slant = 0.02 * std::sqrt(2.0);
  CHECK(place(top, "the frame edge").y == WithinAbs{-slant, snap});
  CHECK(place(top, "the edge of the soffit").y == WithinAbs{0.172 - slant, snap});
  CHECK(shown(section(top), {0.086, 0.086 - slant / 2}) == Fill{plaster});
}

TEST_CASE("a sub-frame stands between opening and frame where its width, depth and setback say") {
  const Section jamb = section(with_sub_frame(reveal()));
  CHECK(shown(jamb, {0.02, -0.17}) == Fill{ground});
  CHECK(shown(jamb, {0.02, -0.25}) == Fill{ground});
  CHECK(shown(jamb, {0.02, -0.27}) == Fill{yard});
  CHECK(shown(jamb, {0.02, -0.16}) == Fill{room});
  CHECK(shown(jamb, {0.05, -0.2}) == Fill{timber});
  CHECK(shown(jamb, {0.05, -0.17}) == Fill{room});
  CHECK(jamb.x.back() == WithinAbs{0.14, rounding});
  CHECK(shown(section(with_sub_frame(head())), {0.17, -0.02}) == Fill{ground});
  CHECK(shown(section(with_sub_frame(sill())), {0.17, 0.02}) == Fill{ground});
  Reveal plain = reveal();
  plain.sub_frame.region = ground;  // as deep as the frame, 30 mm
  CHECK(shown(section(plain), {0.029, -0.18}) == Fill{ground});
  CHECK(shown(section(plain), {0.031, -0.18}) == Fill{timber});
  CHECK(shown(section(plain), {0.02, -0.16}) == Fill{room});
}

TEST_CASE("a sub-frame that shows is a place of its own, one behind the lining is none") {
  Reveal jamb = with_sub_frame(reveal());
  check_place(jamb, "the edge of the sub-frame", {0, -0.162});
  check_place(jamb, "the frame edge", {0.04, -0.172});
  jamb.lining = {{plaster, 0.05}};
  CHECK_FALSE(has_place(jamb, "the sub-frame"));
  check_place(jamb, "the frame edge", {0.05, -0.172});
  CHECK(shown(section(jamb), {0.045, -0.167}) == Fill{plaster});  // on, beside the sub-frame
}

TEST_CASE(
    "the sill lies under the frame as far as a sub-frame further in, and around one further out") {
  Sill foot = sill();
  foot.sub_frame = {ground, 0.04, 0.05, 0.13};  // 30 mm behind the frame's face
  CHECK(shown(section(foot), {0.23, 0.02}) == Fill{stone});
  CHECK(shown(section(foot), {0.23, 0.06}) == Fill{timber});
  foot.sub_frame = {ground, 0.04, 0.1, 0.08};
  CHECK(shown(section(foot), {0.255, 0.02}) == Fill{ground});
  CHECK(shown(section(foot), {0.27, 0.02}) == Fill{stone});
}

TEST_CASE("a rebate is the wall's masonry in front of the frame, in a head its outer lintel") {
  Reveal jamb = reveal();
  jamb.rebate = 0.05;
  CHECK(shown(section(jamb), {0.045, -0.25}) == Fill{brick});
  CHECK(shown(section(jamb), {0.055, -0.25}) == Fill{yard});
  CHECK(shown(section(jamb), {0.045, -0.23}) == Fill{timber});
  check_place(jamb, "the frame edge", {0, -0.172});  // the room sees none of it
  Head top = head();
  top.rebate = 0.05;
  CHECK(shown(section(top), {0.3, -0.045}) == Fill{brick});
  top.outer_lintel = stone;
  CHECK(shown(section(top), {0.3, -0.045}) == Fill{stone});
}

TEST_CASE("what an edge of a window cannot be is objected to, each in its words") {
  Reveal jamb = reveal();
  jamb.sub_frame.width = 0.05;
  check_objection(jamb, "but no material");
  jamb = with_sub_frame(reveal());
  jamb.sub_frame.depth = 0.263;
  check_objection(jamb, "the sub-frame stands into the room");
  jamb.sub_frame = {ground, 0.04, 0.05, 0.0};
  check_objection(jamb, "nothing closes the gap");
  jamb.sub_frame = {ground, 0.04, 0.05, 0.18};
  check_objection(jamb, "nothing closes the gap");
  jamb.sub_frame = {ground, 0.04, 0.242, 0.1};
  jamb.splay = 0.05;
  check_objection(jamb, "the sub-frame is flush with the inside");
  jamb = reveal();
  jamb.rebate = 0.1;
  check_objection(jamb, "covers the whole frame");
  jamb.rebate = 0.05;
  jamb.frame_setback = 0;
  check_objection(jamb, "flush with the outside");
  jamb = reveal();
  jamb.rebate = 0.05;
  jamb.layers = {{plaster, 0.015}, {brick, 0.102}, {air, 0.05, true}, {brick, 0.102}};
  jamb.frame_setback = 0.11;
  check_objection(jamb, "the rebate is hollow");
  jamb.frame_setback = 0.102;
  CHECK(objection_of(jamb) == "it can be built");
  Head top = head();
  top.splay = 0.25;
  check_objection(top, "cuts through the lintel");
  top.lintel_height = 0.3;
  CHECK(objection_of(top) == "it can be built");
  top.splay = 1.03;
  check_objection(top, "cuts back the whole wall");
  top = head();
  top.rebate = 0.05;
  top.frame_setback = 0.12;
  check_objection(top, "hang from the lintel");
}

}  // namespace quoin::geometry
