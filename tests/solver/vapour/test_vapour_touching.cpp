// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cstddef>
#include <vector>

#include "geometry/two_sided.hpp"
#include "materials/moist_air.hpp"
#include "solver/vapour/vapour.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

// Squares of material that touch in one point alone: no vapour passes there, so that each is as it
// is by itself. A square alone is the reference, on the same lines.

namespace quoin::solver {
namespace {

using testing::Problem;
using testing::WithinRel;

const SpaceId room{0}, outside{1};

/// Which squares are painted, of 0.2 m, touching in (0.2, 0.2), and by how much they overlap, m.
struct Squares {
  bool lower_left = true;
  bool upper_right = true;
  double overlap = 0.0;
};

geometry::Mesh mesh_of(const Squares& squares) {
  Problem problem;
  problem.space(20, 0.1);
  problem.space(10, 0.05);
  const RegionId one = problem.material(0.8), other = problem.material(2.5);
  const double reach = 0.2 + squares.overlap;
  problem.paint(room, 0, 0.2, 0.2, 0.4);
  problem.paint(outside, 0.2, 0.4, 0, 0.2);
  if (squares.lower_left) problem.paint(one, 0, reach, 0, reach);
  if (squares.upper_right) problem.paint(other, 0.2, 0.4, 0.2, 0.4);
  return problem.field(8, 2).mesh;
}

/// All at 20 degC; coats of some sd on every surface, m, or four times that.
VapourField vapour_of(const geometry::Mesh& mesh, double sd) {
  VapourPhysics physics;
  for (const double factor : {10.0, 50.0}) {
    physics.openness.add(1.0 / factor);
    physics.wet.add(0);
  }
  SpacePressures pressures;
  for (const SpaceId space : {room, outside}) {
    physics.air.add(space);
    physics.coat.add(geometry::Per<RegionId, double>(2, sd));
    // The upper square is tighter to the room, so that the squares differ where they touch.
    if (space == room) physics.coat[room][RegionId(1u)] = 4 * sd;
    pressures.add((space == room ? 0.7 : 0.3) * materials::saturation_pressure(20));
  }
  return vapour_field(mesh, std::vector<double>(mesh.nodes(), 20.0), physics, pressures, {});
}

double flow_of(const Squares& squares, double sd) {
  return vapour_of(mesh_of(squares), sd).flows[room];
}

}  // namespace

TEST_CASE("squares that touch in a point let as much vapour through as each of them alone") {
  for (const double sd : {0.5, 0.0}) {
    CAPTURE(sd);
    const double one = flow_of({true, false}, sd), other = flow_of({false, true}, sd);
    REQUIRE(one > 0.0);
    REQUIRE(other > 0.0);
    // 1e-6: of doubled lines that are joined, nodes differ by 1e-7 of a drop. The lines are the
    // same.
    CHECK(flow_of({}, sd) == WithinRel{one + other, 1e-6});
    // Sharing an edge of 10 mm they let through another amount.
    CHECK_FALSE(flow_of({true, true, 0.01}, sd) == WithinRel{one + other, 1e-3});
  }
}

TEST_CASE("each of the squares that touch in a point has a vapour pressure of its own there") {
  const geometry::Mesh both = mesh_of({}), lower = mesh_of({true, false});
  REQUIRE(both.touching.size() == 1);
  const std::size_t place = both.touching.begin()->first;
  const std::size_t i = place % both.nx(), j = place / both.nx();
  const geometry::TwoSided nodes(both), alone(lower);
  const std::size_t below = nodes.corner(i - 1, j - 1, true, true);
  const std::size_t above = nodes.corner(i, j, false, false);
  CHECK(nodes.leader(below) != nodes.leader(above));
  CHECK(nodes.of_mesh(below) == both.corner(i - 1, j - 1, true, true));
  CHECK(nodes.of_mesh(above) == both.corner(i, j, false, false));
  CHECK(nodes.of_mesh(below) != nodes.of_mesh(above));
  const VapourField field = vapour_of(both, 0.5);
  const double reference = vapour_of(lower, 0.5).pressure[alone.corner(i - 1, j - 1, true, true)];
  CHECK(field.pressure[below] == WithinRel{reference, 1e-6});
  CHECK_FALSE(field.pressure[above] == WithinRel{reference, 1e-3});
}

}  // namespace quoin::solver
