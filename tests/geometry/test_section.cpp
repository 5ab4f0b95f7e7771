// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <algorithm>
#include <vector>

#include "tests/geometry/drawn.hpp"

namespace quoin::geometry {
namespace {

using Ruler = std::vector<double>;

/// A wall 0.3 thick and 1 m high between two airs.
Sheet wall() {
  return {patch(space(0), -0.1, 0, 0, 1), patch(space(1), 0.3, 0.4, 0, 1),
          patch(material(0), 0, 0.3, 0, 1)};
}

double narrowest(const Ruler& lines) {
  double least = lines.back() - lines.front();
  for (std::size_t k = 1; k < lines.size(); ++k) least = std::min(least, lines[k] - lines[k - 1]);
  return least;
}

}  // namespace

TEST_CASE("a wall between two airs is three columns in one row") {
  const Section section = section_of(wall());
  CHECK(section.x == Ruler{-0.1, 0, 0.3, 0.4});
  CHECK(section.y == Ruler{0, 1});
  CHECK(shown(section, {-0.05, 0.5}) == space(0));
  CHECK(shown(section, {0.15, 0.5}) == material(0));
  CHECK(shown(section, {0.35, 0.5}) == space(1));
}

TEST_CASE("of two patches in one place the later one shows") {
  Sheet sheet = wall();
  sheet.push_back(patch(material(1), 0.1, 0.2, 0.4, 0.6));
  CHECK(shown(section_of(sheet), {0.15, 0.5}) == material(1));
  CHECK(shown(section_of(sheet), {0.15, 0.3}) == material(0));
  std::swap(sheet[2], sheet[3]);  // the other way round the wall covers it
  CHECK(shown(section_of(sheet), {0.15, 0.5}) == material(0));
}

TEST_CASE("painting nothing makes a gap") {
  Sheet sheet = wall();
  sheet.push_back(patch(std::monostate{}, 0.1, 0.2, 0.4, 0.6));
  CHECK(shown(section_of(sheet), {0.15, 0.5}) == Fill{});
}

TEST_CASE("the way round an outline does not matter") {
  Sheet sheet = wall();
  std::reverse(sheet[2].outline.begin(), sheet[2].outline.end());
  CHECK(section_of(sheet).cells == section_of(wall()).cells);
}

TEST_CASE("an L-shaped outline paints an L") {
  Sheet sheet = {{material(0), {{0, 0}, {2, 0}, {2, 1}, {1, 1}, {1, 2}, {0, 2}}, {}}};
  const Section section = section_of(sheet);
  CHECK(shown(section, {0.5, 1.5}) == material(0));
  CHECK(shown(section, {1.5, 0.5}) == material(0));
  CHECK(shown(section, {1.5, 1.5}) == Fill{});
}

TEST_CASE("coordinates a rounding apart are one line, so no sliver arises") {
  // 0.1 + 0.2 is not 0.3 in doubles; 4 micrometres are a slip of the pen.
  const Sheet sheet = {patch(material(0), 0, 0.1 + 0.2, 0, 1), patch(material(1), 0.3, 0.6, 0, 1),
                       patch(material(2), 0.600004, 0.9, 0, 1.000003)};
  const Section section = section_of(sheet);
  CHECK(section.x == Ruler{0, 0.3, 0.6, 0.9});
  CHECK(section.y == Ruler{0, 1});
}

TEST_CASE("coordinates two hundredths of a millimetre apart stay two lines") {
  const Sheet sheet = {patch(material(0), 0, 0.3, 0, 1), patch(material(1), 0.30002, 0.6, 0, 1)};
  const Section section = section_of(sheet);
  CHECK(section.x == Ruler{0, 0.3, 0.30002, 0.6});
  CHECK(shown(section, {0.30001, 0.5}) == Fill{});
}

TEST_CASE("many strokes that end anywhere leave no strip narrower than the raster") {
  Sheet sheet;
  for (int k = 0; k < 400; ++k) {
    const double at = 0.1 + 1e-7 * (k * 7919 % 4001);  // within 0.4 mm, in no order
    sheet.push_back(patch(material(static_cast<std::size_t>(k % 3)), 0, at, 0, 1));
  }
  sheet.push_back(patch(material(5), 0.1002, 0.2, 0, 1));
  const Section section = section_of(sheet);
  CHECK(narrowest(section.x) >= 0.999 * snap);  // 0.999: lines are decimals rounded to doubles
}

TEST_CASE("patches whose edges are joined to one line are painted from that line") {
  // 4 and 13 micrometres are nearer than the raster: one line at 0.
  const Sheet sheet = {patch(material(0), 0.000004, 0.1, 0, 1),
                       patch(material(1), 0.000013, 0.2, 0, 1)};
  const Section section = section_of(sheet);
  CHECK(shown(section, {0.05, 0.5}) == material(1));
  CHECK(shown(section, {0.15, 0.5}) == material(1));
}

TEST_CASE("lines are the doubles nearest to decimals of a hundredth millimetre") {
  const Section section = section_of({patch(material(0), 0.015, 0.015 + 0.33, 0, 0.1 * 3)});
  CHECK(section.x == Ruler{0.015, 0.345});
  CHECK(section.y == Ruler{0, 0.3});
}

TEST_CASE("painting a wall in two strokes is painting it in one") {
  Sheet strokes = wall();
  strokes.pop_back();
  for (const double y : {0.0, 0.25, 0.5, 0.75}) {
    strokes.push_back(patch(material(0), 0, 0.2, y, y + 0.25));
    strokes.push_back(patch(material(0), 0.15, 0.3, y, y + 0.25));
  }
  const Section section = section_of(strokes);
  CHECK(section.x == section_of(wall()).x);
  CHECK(section.y == section_of(wall()).y);
  CHECK(section.cells == section_of(wall()).cells);
}

TEST_CASE("two different materials side by side keep their line") {
  Sheet strokes = wall();
  strokes.push_back(patch(material(1), 0.1, 0.3, 0, 1));
  CHECK(section_of(strokes).x == Ruler{-0.1, 0, 0.1, 0.3, 0.4});
}

TEST_CASE("what lies more than one strip beyond the material is cut away") {
  Sheet sheet = wall();
  sheet.insert(sheet.begin(), patch(space(2), -5, -4, 0, 1));
  sheet.insert(sheet.begin(), patch(space(3), 0, 0.3, 8, 9));
  const Section section = section_of(sheet);
  CHECK(section.x.front() >= -4.0);
  CHECK(section.y.back() <= 8.0);
  CHECK(shown(section, {-0.05, 0.5}) == space(0));
}

TEST_CASE("a damp band paints only over its wall") {
  Sheet sheet = wall();
  sheet.push_back(patch(material(1), -0.1, 0.15, 0, 1));                 // lining over part of it
  sheet.push_back(patch(material(2), -0.5, 0.5, -1, 0.3, RegionId(0)));  // band over the wall only
  const Section section = section_of(sheet);
  CHECK(shown(section, {0.2, 0.2}) == material(2));
  CHECK(shown(section, {0.2, 0.5}) == material(0));
  CHECK(shown(section, {0.1, 0.2}) == material(1));
  CHECK(shown(section, {0.35, 0.2}) == space(1));
}

TEST_CASE("an empty sheet and a sheet of no area show nothing") {
  CHECK(section_of({}).cells.empty());
  CHECK(section_of({{material(0), {{0, 0}, {1, 0}, {1, 0}}, {}}}).cells.empty());
}

TEST_CASE("a sheet without material shows its spaces still") {
  const Section section = section_of({patch(space(0), 0, 1, 0, 1)});
  CHECK(shown(section, {0.5, 0.5}) == space(0));
}

}  // namespace quoin::geometry
