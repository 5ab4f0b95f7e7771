// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <set>
#include <utility>
#include <vector>

#include "geometry/surface.hpp"
#include "tests/geometry/drawn.hpp"
#include "tests/support/within.hpp"

namespace quoin::geometry {
namespace {

using testing::WithinAbs;

constexpr double rounding = 1e-12;  // of sums of a few dozen lengths near 1 m

Mesh mesh_of_sheet(const Sheet& sheet, double density = 3) {
  const Section section = section_of(sheet);
  return mesh_of(section, subdivision_of(section, density));
}

Per<SpaceId, SpaceId> each_its_own(std::size_t spaces) {
  Per<SpaceId, SpaceId> air;
  for (std::size_t s = 0; s < spaces; ++s) air.add(SpaceId(s));
  return air;
}

/// An external corner, outside air 0 around it, room 1 within.
Sheet corner() {
  return {patch(space(0), -0.1, 1.3, -0.1, 1.3), patch(material(0), 0, 1.3, 0, 1.3),
          patch(space(1), 0.3, 1.3, 0.3, 1.3)};
}

/// A block with a hollow of air 1 in it, air 0 on its left.
Sheet hollow() {
  return {patch(space(0), -0.1, 0, 0, 1), patch(material(0), 0, 1, 0, 1),
          patch(space(1), 0.3, 0.7, 0.3, 0.7)};
}

double length_to(const std::vector<Face>& faces, SpaceId space) {
  double sum = 0.0;
  for (const Face& face : faces) {
    if (face.space == space) sum += face.length;
  }
  return sum;
}

Fill beside(const Mesh& mesh, const Face& face, double side) {
  const Point from = mesh.place(face.from), to = mesh.place(face.to);
  const double dx = to.x - from.x, dy = to.y - from.y;
  const double reach = side * 1e-4 / std::hypot(dx, dy);  // to the left of the walk for side > 0
  return shown(mesh.section, {(from.x + to.x) / 2 - reach * dy, (from.y + to.y) / 2 + reach * dx});
}

}  // namespace

TEST_CASE("every face has its material on the left of the walk and its space on the right") {
  for (const Sheet& sheet : {corner(), hollow()}) {
    const Mesh mesh = mesh_of_sheet(sheet);
    const std::vector<Face> all = faces(mesh);
    REQUIRE(!all.empty());
    for (const Face& face : all) {
      CHECK(beside(mesh, face, +1) == Fill{face.region});
      CHECK(beside(mesh, face, -1) == Fill{face.space});
    }
  }
}

TEST_CASE("the faces of a space add up to the length of its surface") {
  const std::vector<Face> all = faces(mesh_of_sheet(corner(), 11));
  CHECK(length_to(all, SpaceId(0)) == WithinAbs{2.6, rounding});
  CHECK(length_to(all, SpaceId(1)) == WithinAbs{2.0, rounding});
}

TEST_CASE("a face looks up, down or sideways as seen from the material") {
  const Mesh mesh = mesh_of_sheet({patch(space(0), -1, 2, -1, 2), patch(material(0), 0, 1, 0, 1)});
  std::set<Facing> met;
  for (const Face& face : faces(mesh)) {
    const Point from = mesh.place(face.from), to = mesh.place(face.to);
    met.insert(face.facing);
    if (from.x == to.x) {
      CHECK(face.facing == Facing::sideways);
    } else {
      CHECK(face.facing == (from.y == 1.0 ? Facing::up : Facing::down));
    }
  }
  CHECK(met.size() == 3);
}

TEST_CASE("where a material touches nothing there is no face") {
  const Mesh mesh = mesh_of_sheet({patch(space(0), -1, 0, 0, 1), patch(material(0), 0, 1, 0, 1)});
  for (const Face& face : faces(mesh)) CHECK(mesh.place(face.from).x == 0.0);
  CHECK(faces(mesh_of_sheet({patch(material(0), 0, 1, 0, 1)})).empty());
}

TEST_CASE("the surface of a corner is one line round it, measured from one end to the other") {
  const Mesh mesh = mesh_of_sheet(corner(), 7);
  const std::vector<Surface> all = surfaces(mesh, each_its_own(2));
  REQUIRE(all.size() == 2);
  for (const Surface& surface : all) {
    CHECK_FALSE(surface.closed);
    REQUIRE(surface.along.size() == surface.faces.size() + 1);
    CHECK(surface.along.front() == 0.0);
    CHECK(surface.along.back() == WithinAbs{surface.air == SpaceId(0) ? 2.6 : 2.0, rounding});
    for (std::size_t k = 0; k + 1 < surface.faces.size(); ++k) {
      CHECK(surface.faces[k].to == surface.faces[k + 1].from);
      CHECK(surface.along[k + 1] - surface.along[k] ==
            WithinAbs{surface.faces[k].length, rounding});
    }
    CHECK(surface.node(0) == surface.faces.front().from);
    CHECK(surface.node(surface.faces.size()) == surface.faces.back().to);
  }
}

TEST_CASE("the surface of a hollow is closed and as long as its walls") {
  const std::vector<Surface> all = surfaces(mesh_of_sheet(hollow()), each_its_own(2));
  REQUIRE(all.size() == 2);
  int closed = 0;
  for (const Surface& surface : all) {
    CHECK(surface.closed == (surface.air == SpaceId(1)));
    closed += surface.closed ? 1 : 0;
    if (surface.closed) {
      CHECK(surface.along.back() == WithinAbs{1.6, rounding});
      CHECK(surface.node(0) == surface.node(surface.faces.size()));
    }
  }
  CHECK(closed == 1);
}

TEST_CASE("spaces of the same air are walked as one surface") {
  // A wall with a wardrobe before its upper half: space 1 like space 0.
  const Sheet sheet = {patch(space(0), -0.1, 0, 0, 0.5), patch(space(1), -0.1, 0, 0.5, 1),
                       patch(material(0), 0, 0.3, 0, 1)};
  const Mesh mesh = mesh_of_sheet(sheet);
  Per<SpaceId, SpaceId> air = each_its_own(2);
  CHECK(surfaces(mesh, air).size() == 2);
  air[SpaceId(1)] = SpaceId(0);
  const std::vector<Surface> together = surfaces(mesh, air);
  REQUIRE(together.size() == 1);
  CHECK(together.front().air == SpaceId(0));
  CHECK(together.front().along.back() == WithinAbs{1.0, rounding});
}

TEST_CASE("where two blocks meet only in a point each surface keeps to its block") {
  // Blocks south-west and north-east, air in the other two quarters.
  const Sheet sheet = {patch(space(0), 0, 2, 0, 2), patch(material(0), 0, 1, 0, 1),
                       patch(material(1), 1, 2, 1, 2)};
  const Mesh mesh = mesh_of_sheet(sheet);
  const std::vector<Surface> all = surfaces(mesh, each_its_own(1));
  REQUIRE(all.size() == 2);
  for (const Surface& surface : all) {
    CHECK(surface.along.back() == WithinAbs{2.0, rounding});
    for (const Face& face : surface.faces) CHECK(face.region == surface.faces.front().region);
  }
}

TEST_CASE("every face belongs to exactly one surface") {
  Sheet sheet = corner();
  sheet.push_back(patch(space(1), 0.1, 0.2, 0.6, 0.9));     // a duct in the wall
  sheet.push_back(patch(material(1), 0.3, 0.4, 0.3, 0.4));  // a post in the angle
  sheet.push_back(patch(material(0), 0.4, 0.5, 0.4, 0.5));  // touching it in a point
  const Mesh mesh = mesh_of_sheet(sheet);
  std::multiset<std::pair<std::size_t, std::size_t>> walked, present;
  for (const Face& face : faces(mesh)) present.insert({face.from, face.to});
  for (const Surface& surface : surfaces(mesh, each_its_own(2))) {
    for (const Face& face : surface.faces) walked.insert({face.from, face.to});
  }
  CHECK(walked == present);
}

}  // namespace quoin::geometry
