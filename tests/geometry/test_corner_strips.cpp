// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <cmath>
#include <tuple>
#include <vector>

#include "geometry/corner_strips.hpp"
#include "geometry/paint.hpp"
#include "tests/geometry/drawn.hpp"

namespace quoin::geometry {
namespace {

/// A strip in mm: from and to along x, from and to along y.
using Strip = std::tuple<double, double, double, double>;

/// The strips of space 0 in mm, in order. Material 0 is wall, all others are frame.
std::vector<Strip> strips(const Sheet& sheet, std::size_t of = 0) {
  Per<RegionId, char> is_frame(8, 1);
  is_frame[RegionId(0)] = 0;
  std::vector<Strip> all;
  const auto mm = [](double metres) { return std::round(1e6 * metres) / 1e3; };
  for (const Outline& outline : corner_strips(section_of(sheet), SpaceId(of), is_frame)) {
    const Extent extent = extent_of(outline);
    all.emplace_back(mm(extent.low.x), mm(extent.high.x), mm(extent.low.y), mm(extent.high.y));
  }
  std::sort(all.begin(), all.end());
  return all;
}

Patch in_mm(Fill fill, double x0, double x1, double y0, double y1) {
  return patch(fill, x0 / 1e3, x1 / 1e3, y0 / 1e3, y1 / 1e3);
}

/// A sash that stands `depth` mm proud of a pane and is 60 mm wide, cut planes on both sides.
Sheet sash(double depth) {
  return {in_mm(space(0), 0, 300, 0, 200), in_mm(material(1), 0, 60, -40, depth),
          in_mm(material(2), 60, 300, -40, 0)};
}

/// The same sheet with x and y exchanged.
Sheet turned(Sheet sheet) {
  for (Patch& patch : sheet) {
    for (Point& corner : patch.outline) std::swap(corner.x, corner.y);
  }
  return sheet;
}

Sheet mirrored(Sheet sheet) {
  for (Patch& patch : sheet) {
    for (Point& corner : patch.outline) corner.x = -corner.x;
  }
  return sheet;
}

}  // namespace

TEST_CASE("the strips of a wood frame lie where the standard draws them") {
  // Source: EN ISO 10077-2 example D.4 (memory): (9,71)-(26,71), (26,71)-(26,88), (110,51)-(110,88)
  // and (110,51)-(140,51) mm, the air above.
  const Sheet sheet{
      in_mm(space(0), 0, 300, 51, 150),
      in_mm(space(1), 0, 300, -50, 5),
      {material(1),
       {{0, 0.005}, {0, 0.071}, {0.026, 0.071}, {0.026, 0.088}, {0.11, 0.088}, {0.11, 0.005}},
       {}},
      in_mm(material(2), 95, 300, 23, 51),
      in_mm(material(3), 95, 110, 51, 54)};
  CHECK(strips(sheet) ==
        std::vector<Strip>{
            {9, 26, 71, 72}, {25, 26, 71, 88}, {110, 111, 51, 88}, {110, 140, 51, 52}});
}

TEST_CASE("a deep sash is covered over its depth, the pane beside it over 30 mm at most") {
  CHECK(strips(sash(80)) == std::vector<Strip>{{60, 61, 0, 80}, {60, 90, 0, 1}});
  CHECK(strips(sash(30)) == std::vector<Strip>{{60, 61, 0, 30}, {60, 90, 0, 1}});
  CHECK(strips(sash(12)) == std::vector<Strip>{{60, 61, 0, 12}, {60, 72, 0, 1}});
}

TEST_CASE("a frame turned or mirrored has its strips turned or mirrored") {
  CHECK(strips(turned(sash(12))) == std::vector<Strip>{{0, 1, 60, 72}, {0, 12, 60, 61}});
  CHECK(strips(mirrored(sash(12))) == std::vector<Strip>{{-72, -60, 0, 1}, {-61, -60, 0, 12}});
}

TEST_CASE("lines through a face from elsewhere in the section change no strip") {
  Sheet sheet = sash(80);
  sheet.push_back(in_mm(material(3), 70, 100, -30, -10));
  sheet.push_back(in_mm(material(3), 20, 30, -30, 41));
  CHECK(strips(sheet) == strips(sash(80)));
}

TEST_CASE("a face of sash and bead in one line is one face") {
  Sheet sheet = sash(20);
  sheet.push_back(in_mm(material(3), 50, 60, 0, 8));
  CHECK(strips(sheet) == strips(sash(20)));
}

TEST_CASE("of two protruding faces the shorter has the depth") {
  // A step 15 mm high and 40 mm wide, a convex corner at the end of both.
  const Sheet sheet{in_mm(space(0), -100, 300, -40, 200), in_mm(material(1), 0, 100, -60, 0),
                    in_mm(material(1), 40, 100, 0, 15), in_mm(material(1), 0, 300, -80, -40)};
  const auto all = strips(sheet);
  CHECK(std::count(all.begin(), all.end(), Strip{39, 40, 0, 15}) == 1);
  CHECK(std::count(all.begin(), all.end(), Strip{25, 40, 0, 1}) == 1);
}

TEST_CASE("in a groove both corners have strips, thin enough not to touch the other side") {
  const Sheet sheet{in_mm(space(0), 0, 100, 0, 50), in_mm(material(1), 0, 100, -60, 0),
                    in_mm(space(0), 50, 51, -10, 0)};
  CHECK(strips(sheet) ==
        std::vector<Strip>{
            {50, 50.5, -10, 0}, {50, 51, -10, -9}, {50, 51, -10, -9}, {50.5, 51, -10, 0}});
}

TEST_CASE("corners of the wall, convex corners and corners of other airs have no strips") {
  Sheet wall = sash(20);
  wall[1].fill = material(0);
  CHECK(strips(wall).empty());
  CHECK(strips(sash(20), 1).empty());
  const Sheet convex{in_mm(space(0), 0, 300, 0, 200), in_mm(material(1), 0, 60, 0, 80)};
  CHECK(strips(convex).empty());
}

TEST_CASE("a corner of which no face ends within the section has no depth and no strips") {
  const Sheet cut{in_mm(space(0), 0, 300, 0, 200), in_mm(material(1), -60, 0, -40, 200),
                  in_mm(material(2), 0, 300, -40, 0)};
  CHECK(strips(cut).empty());
}

TEST_CASE("strips painted over the section touch the faces they stand for and nothing else") {
  Sheet sheet = sash(12);
  const Section before = section_of(sheet);
  Per<RegionId, char> is_frame(8, 1);
  for (Outline& outline : corner_strips(before, SpaceId(0), is_frame))
    sheet.push_back({space(7), std::move(outline), {}});
  const Section after = section_of(sheet);
  CHECK(shown(after, {0.0605, 0.006}) == space(7));
  CHECK(shown(after, {0.0605, 0.0125}) == space(0));
  CHECK(shown(after, {0.066, 0.0005}) == space(7));
  CHECK(shown(after, {0.0725, 0.0005}) == space(0));
  CHECK(shown(after, {0.03, 0.006}) == material(1));
  CHECK(shown(after, {0.066, -0.0005}) == material(2));
}

}  // namespace quoin::geometry
