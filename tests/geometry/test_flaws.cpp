// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <vector>

#include "geometry/flaws.hpp"
#include "tests/geometry/drawn.hpp"

namespace quoin::geometry {
namespace {

Sheet wall() {
  return {patch(space(0), -0.1, 0, 0, 1), patch(space(1), 0.3, 0.4, 0, 1),
          patch(material(0), 0, 0.3, 0, 1)};
}

std::vector<Flaw> flaws_of(const Sheet& sheet) { return flaws(sheet, section_of(sheet)); }

/// The only flaw of a sheet.
Flaw flaw_of(const Sheet& sheet) {
  const std::vector<Flaw> found = flaws_of(sheet);
  REQUIRE(found.size() == 1);
  return found.front();
}

bool lies_in(Point place, double x0, double x1, double y0, double y1) {
  return x0 < place.x && place.x < x1 && y0 < place.y && place.y < y1;
}

}  // namespace

TEST_CASE("a sound drawing has no flaw") { CHECK(flaws_of(wall()).empty()); }

TEST_CASE("a sheet without material is a flaw, and the only one told") {
  CHECK(flaw_of({patch(space(0), 0, 1, 0, 1)}).kind == FlawKind::no_material);
  CHECK(flaw_of({}).kind == FlawKind::no_material);
}

TEST_CASE("material that no space touches is a flaw") {
  CHECK(flaw_of({patch(material(0), 0, 1, 0, 1)}).kind == FlawKind::no_space);
  // Touching in a corner alone is not touching.
  CHECK(flaw_of({patch(material(0), 0, 1, 0, 1), patch(space(0), 1, 2, 1, 2)}).kind ==
        FlawKind::no_space);
}

TEST_CASE("a space that touches no material is found with its name and its place") {
  Sheet sheet = wall();
  sheet.push_back(patch(space(2), 2, 3, 0, 1));
  const Flaw flaw = flaw_of(sheet);
  CHECK(flaw.kind == FlawKind::idle_space);
  CHECK(flaw.space == SpaceId(2));
  CHECK(lies_in(flaw.where, 2, 3, 0, 1));
}

TEST_CASE("material that a gap parts from the rest along a whole interface is found at the gap") {
  for (const double gap : {0.0003, 0.005, 0.05}) {
    CAPTURE(gap);
    // Each half meets its own space alone; the gap is told once.
    const Flaw flaw =
        flaw_of({patch(space(0), -0.1, 0, 0, 1), patch(material(0), 0, 0.1, 0, 1),
                 patch(material(1), 0.1 + gap, 0.3, 0, 1), patch(space(1), 0.3, 0.4, 0, 1)});
    CHECK(flaw.kind == FlawKind::parted);
    CHECK(flaw.region == RegionId(0));
    CHECK(flaw.space == SpaceId(0));
    CHECK(lies_in(flaw.where, 0.1, 0.1 + gap, 0, 1));
  }
}

TEST_CASE("a gap that material runs past parts nothing, nor does a shelf in a room") {
  Sheet sheet = wall();
  sheet.push_back(patch(std::monostate{}, 0.1, 0.2, 0, 0.5));
  CHECK(flaws_of(sheet).empty());
  sheet = wall();
  sheet.push_back(patch(space(0), -1, 0, 0, 1));
  sheet.push_back(patch(material(1), -0.5, -0.4, 0.3, 0.4));
  CHECK(flaws_of(sheet).empty());
}

TEST_CASE("a space hidden under material is idle, told once however often painted") {
  Sheet sheet = wall();
  sheet.insert(sheet.begin(), patch(space(2), 0.1, 0.2, 0.1, 0.2));
  sheet.insert(sheet.begin(), patch(space(2), 0.1, 0.2, 0.4, 0.5));
  CHECK(flaw_of(sheet).kind == FlawKind::idle_space);
}

TEST_CASE("an island of material is found with its region and its place") {
  Sheet sheet = wall();
  sheet.push_back(patch(material(3), 0, 0.3, 1.5, 1.8));
  const Flaw flaw = flaw_of(sheet);
  CHECK(flaw.kind == FlawKind::island);
  CHECK(flaw.region == RegionId(3));
  CHECK(lies_in(flaw.where, 0, 0.3, 1.5, 1.8));
}

TEST_CASE("two regions that touch each other are one piece, no island") {
  Sheet sheet = wall();
  sheet.push_back(patch(material(3), 0, 0.3, 1.0, 1.2));
  CHECK(flaws_of(sheet).empty());
}

TEST_CASE("a space painted over another along a face is found with both and its place") {
  Sheet sheet = wall();
  sheet.insert(sheet.begin() + 2, patch(space(2), -0.1, 0, 0.6, 0.9));
  const Flaw flaw = flaw_of(sheet);
  CHECK(flaw.kind == FlawKind::overlapping_spaces);
  CHECK(flaw.space == SpaceId(2));
  CHECK(flaw.other == SpaceId(0));
  CHECK(lies_in(flaw.where, -0.1, 0, 0.6, 0.9));
}

TEST_CASE("an overlap is found though the covering space is painted twice") {
  Sheet sheet = wall();
  sheet.insert(sheet.begin() + 2, 2, patch(space(2), -0.1, 0, 0.6, 0.9));
  CHECK(flaw_of(sheet).kind == FlawKind::overlapping_spaces);
}

TEST_CASE("spaces that overlap away from any material do no harm") {
  Sheet sheet = wall();
  sheet.front() = patch(space(0), -0.5, 0, 0, 1);
  sheet.insert(sheet.begin() + 1, patch(space(1), -0.5, -0.3, 0, 1));
  CHECK(flaws_of(sheet).empty());
}

TEST_CASE("a space over a space with material painted between is meant") {
  Sheet sheet = {patch(space(0), -0.1, 1.3, -0.1, 1.3), patch(material(0), 0, 1.3, 0, 1.3),
                 patch(space(1), 0.3, 1.3, 0.3, 1.3)};
  CHECK(flaws_of(sheet).empty());
}

TEST_CASE("a hole of nothing inside material is found with its place") {
  Sheet sheet = wall();
  sheet.push_back(patch(std::monostate{}, 0.1, 0.2, 0.4, 0.6));
  const Flaw flaw = flaw_of(sheet);
  CHECK(flaw.kind == FlawKind::enclosed_gap);
  CHECK(lies_in(flaw.where, 0.1, 0.2, 0.4, 0.6));
}

TEST_CASE("nothing at the edge of the sheet is no hole") {
  Sheet sheet = wall();
  sheet.push_back(patch(std::monostate{}, 0.1, 0.2, 0.8, 1.0));
  CHECK(flaws_of(sheet).empty());
}

TEST_CASE("several flaws are told together") {
  Sheet sheet = wall();
  sheet.push_back(patch(space(2), 2, 3, 0, 1));
  sheet.push_back(patch(material(3), 0, 0.3, 1.5, 1.8));
  sheet.push_back(patch(std::monostate{}, 0.1, 0.2, 0.4, 0.6));
  CHECK(flaws_of(sheet).size() == 3);
}

}  // namespace quoin::geometry
