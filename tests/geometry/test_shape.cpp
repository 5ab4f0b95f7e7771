// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include "geometry/shape.hpp"
#include "tests/geometry/drawn.hpp"
#include "tests/support/within.hpp"

namespace quoin::geometry {
namespace {

using testing::WithinAbs;

constexpr double rounding = 1e-15;  // of sums of areas below 1 m2

Shape shape(const Sheet& sheet, std::size_t region) {
  return shape_of(section_of(sheet), RegionId(region));
}

}  // namespace

TEST_CASE("a rectangle has its area, its sides and one piece, whatever lies beside it") {
  const Sheet sheet{patch(material(0), 0, 0.3, 0, 0.2), patch(material(1), 0.1, 0.15, 0.05, 0.2),
                    patch(space(0), 0, 0.3, 0.2, 0.3), patch(material(2), 0.25, 0.3, 0.1, 0.12)};
  const Shape found = shape(sheet, 1);
  CHECK(found.area == WithinAbs{0.05 * 0.15, rounding});
  CHECK(found.width == WithinAbs{0.05, rounding});
  CHECK(found.height == WithinAbs{0.15, rounding});
  CHECK(found.pieces == 1);
}

TEST_CASE("what later patches cover does not count") {
  Sheet sheet{patch(material(0), 0, 0.3, 0, 0.3), patch(material(1), 0.1, 0.2, 0.1, 0.2)};
  sheet.push_back(patch(material(0), 0.15, 0.2, 0.15, 0.2));
  const Shape angle = shape(sheet, 1);
  CHECK(angle.area == WithinAbs{0.0075, rounding});
  CHECK(angle.width == WithinAbs{0.1, rounding});
  CHECK(angle.height == WithinAbs{0.1, rounding});
  CHECK(angle.pieces == 1);
}

TEST_CASE("a region cut through has two pieces, one joined by a corner only, too") {
  Sheet cut{patch(material(0), 0, 0.3, 0, 0.3), patch(material(1), 0.1, 0.2, 0.1, 0.2)};
  cut.push_back(patch(material(0), 0.1, 0.2, 0.14, 0.15));
  CHECK(shape(cut, 1).pieces == 2);
  const Sheet corner{patch(material(0), 0, 0.3, 0, 0.3), patch(material(1), 0.1, 0.15, 0.1, 0.15),
                     patch(material(1), 0.15, 0.2, 0.15, 0.2)};
  CHECK(shape(corner, 1).pieces == 2);
}

TEST_CASE("of cells that a sloping edge divides each half counts for its own region") {
  const Sheet sheet{patch(material(0), 0, 0.3, 0, 0.3),
                    {material(1), {{0, 0}, {0.3, 0}, {0.3, 0.3}}, {}},
                    patch(material(2), 0.1, 0.2, 0.02, 0.04)};
  const Shape triangle = shape(sheet, 1);
  CHECK(triangle.area == WithinAbs{0.045 - 0.002, rounding});
  CHECK(triangle.width == WithinAbs{0.3, rounding});
  CHECK(triangle.pieces == 1);
  CHECK(shape(sheet, 0).area == WithinAbs{0.045, rounding});
}

TEST_CASE("two triangles that meet in one divided cell along their long sides alone are apart") {
  // The wedges of material 1 lie on either side of a strip of material 2 from corner to corner.
  const Sheet sheet{
      patch(material(1), 0, 0.3, 0, 0.3),
      {material(2), {{0, 0}, {0.1, 0}, {0.3, 0.2}, {0.3, 0.3}, {0.2, 0.3}, {0, 0.1}}, {}}};
  CHECK(shape(sheet, 1).pieces == 2);
  CHECK(shape(sheet, 2).pieces == 1);
}

TEST_CASE("a region that is not shown has no shape") {
  const Sheet sheet{patch(material(1), 0, 0.1, 0, 0.1), patch(material(0), 0, 0.3, 0, 0.3)};
  const Shape found = shape(sheet, 1);
  CHECK(found.area == 0.0);
  CHECK(found.pieces == 0);
}

}  // namespace quoin::geometry
