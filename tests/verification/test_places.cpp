// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <vector>

#include "geometry/recipe.hpp"
#include "solver/findings/plain.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

// Recipes against values known from elsewhere.

namespace quoin::testing {
namespace {

const SpaceId room(0), outside(1);

/// Brick 330 mm 0.77, lime plaster 15 mm 0.80 on the wall and in the opening, frame 70 mm of 0.13
/// with 100 mm of it modelled, its outer face 100 mm behind the wall's.
template <class Opening>
void describe_window(Problem& problem, Opening& opening, std::vector<geometry::Layer>& lining) {
  opening.inside = problem.space(1, 0.13);
  opening.outside = problem.space(0, 0.04);
  const RegionId plaster = problem.material(0.80), brick = problem.material(0.77);
  opening.layers = {{plaster, 0.015}, {brick, 0.33}};
  lining = {{plaster, 0.015}};
  opening.frame = problem.material(0.13, false);
}

struct Window {
  double psi;
  double factor;
};

Window solved(const Problem& problem, const geometry::Drawing& drawing) {
  const solver::Solution solution = solver::solution_of({geometry::section_of(drawing.sheet),
                                                         problem.physics(),
                                                         problem.temperatures(),
                                                         {room},
                                                         outside,
                                                         {},
                                                         5e-4,
                                                         2e-4},
                                                        {});
  return {solver::linear_transmittances(drawing.flanks, solution).back().value.value,
          solution.airs.front().coldest.factor.value};
}

}  // namespace

TEST_CASE("a head whose lintel is of the wall's own brick has the psi and factor of a jamb") {
  // Source: the bare jamb of test_corners.cpp, computed with an independent program.
  Problem problem;
  geometry::Head head;
  describe_window(problem, head, head.lining);
  head.lintel = head.layers.back().region;
  const Window bare = solved(problem, geometry::drawing_of(head));
  CHECK(bare.psi == WithinAbs{0.153, 0.0015});
  CHECK(bare.factor == WithinAbs{0.674, 0.0015});
  head.lintel = problem.material(2.3);  // of concrete it is worse: the negative twin
  head.lintel_setback = 0;
  head.lintel_depth = 0.33;
  const Window concrete = solved(problem, geometry::drawing_of(head));
  CHECK(concrete.psi > 0.153 + 0.1);
  CHECK(concrete.factor < 0.674 - 0.05);
}

TEST_CASE("a splayed head without a lintel of its own is the splayed jamb, turned") {
  Problem problem;
  geometry::Head head;
  geometry::Reveal jamb;
  const auto describe = [&](geometry::WindowEdge& edge) {
    edge = {};
    describe_window(problem, edge, edge.lining);
    edge.inside = room;
    edge.outside = outside;
    edge.splay = 0.09;
    edge.rebate = 0.04;
    edge.sub_frame = {problem.material(0.2), 0.03, 0.09, 0.09};
  };
  describe(head);
  head.lintel = head.layers.back().region;
  describe(jamb);
  const Window turned = solved(problem, geometry::drawing_of(head));
  const Window upright = solved(problem, geometry::drawing_of(jamb));
  // Half widths wanted of both: 5e-4 in the factor, 2e-4 of an L2D of 1.7 W/(m K) in psi.
  CHECK(turned.factor == WithinAbs{upright.factor, 2 * 5e-4});
  CHECK(turned.psi == WithinAbs{upright.psi, 2 * 2e-4 * 1.7});
  head.splay = 0.0;  // the negative twin
  CHECK_FALSE(solved(problem, geometry::drawing_of(head)).psi ==
              WithinAbs{upright.psi, 2 * 2e-4 * 1.7});
}

TEST_CASE("a sub-frame of the frame's own kind is more frame, one of steel is a cold bridge") {
  Problem problem;
  geometry::Reveal jamb;
  describe_window(problem, jamb, jamb.lining);
  jamb.frame_seen = 0.13;
  const Window wide = solved(problem, geometry::drawing_of(jamb));
  jamb.frame_seen = 0.1;
  jamb.sub_frame = {problem.material(0.13), 0.03, {}, {}};
  const Window same = solved(problem, geometry::drawing_of(jamb));
  CHECK(same.psi == WithinAbs{wide.psi, 1e-3});
  CHECK(same.factor == WithinAbs{wide.factor, 1e-3});
  jamb.sub_frame.region = problem.material(50);
  const Window steel = solved(problem, geometry::drawing_of(jamb));
  CHECK(steel.psi > same.psi + 0.1);
  CHECK(steel.factor < same.factor - 0.05);
}

TEST_CASE("masonry in front of the frame takes heat flow off it, and warms its edge") {
  Problem problem;
  geometry::Reveal jamb;
  describe_window(problem, jamb, jamb.lining);
  const Window square = solved(problem, geometry::drawing_of(jamb));
  jamb.rebate = 0.05;
  const Window rebated = solved(problem, geometry::drawing_of(jamb));
  CHECK(rebated.psi < square.psi - 0.005);
  CHECK(rebated.factor > square.factor + 0.005);
}

TEST_CASE("a bay corner of 90 degrees is the corner T7, one half of it") {
  // Source: as T7 in test_corners.cpp, computed by two independent discretisations.
  Problem problem;
  geometry::BayCorner bay;
  bay.inside = problem.space(1, 0.13);
  bay.outside = problem.space(0, 0.04);
  bay.layers = {{problem.material(0.75), 0.300}};
  bay.leg = 1.0;
  const auto solve = [&](double angle) {
    bay.angle = angle;
    const geometry::Drawing drawing = geometry::drawing_of(bay);
    return solver::solution_of({geometry::section_of(drawing.sheet),
                                problem.physics(),
                                problem.temperatures(),
                                {room},
                                outside,
                                {},
                                5e-4,
                                1e-4},
                               {});
  };
  const solver::Solution corner = solve(90);
  CHECK(2 * corner.couplings.front().value == WithinRel{3.72876, 2e-4});
  CHECK(corner.airs.front().coldest.factor.value == WithinAbs{0.62146, 0.001});
  const auto psi = solver::linear_transmittances(geometry::drawing_of(bay).flanks, corner);
  CHECK(2 * psi.front().value.value == WithinAbs{0.21999, 5e-4});
  // The blunter the warmer, up to the plane wall.
  const double plain = 0.77193;  // as T7
  const double blunt = solve(135).airs.front().coldest.factor.value;
  const double nearly_plane = solve(179.9).airs.front().coldest.factor.value;
  CHECK(blunt > 0.62146 + 0.03);
  CHECK(blunt < plain - 0.03);
  CHECK(nearly_plane == WithinAbs{plain, 0.002});
  CHECK(solve(225).airs.front().coldest.factor.value > 0.7);  // the room wraps around
}

TEST_CASE("a house wall by a porch weighs room, porch and open air as computed elsewhere") {
  // Source: a coarse solver of our trade notes, good to 0.01: 225 mm brick of 0.80, 15 mm plaster
  // of 0.80, half a brick as flank wall; 0.17 inside, 0.13 in the porch, 0.04 outside.
  Problem problem;
  geometry::PorchWall wall;
  wall.inside = problem.space(0, 0.17);
  wall.outside = problem.space(0, 0.04);
  wall.porch = problem.space(0, 0.13);
  const RegionId plaster = problem.material(0.80), brick = problem.material(0.80);
  wall.layers = {{plaster, 0.015}, {brick, 0.225}};
  wall.wall = 1.5;
  wall.flank = {{brick, 0.102}};
  const geometry::Section section = geometry::section_of(geometry::drawing_of(wall).sheet);
  const geometry::Mesh mesh =
      geometry::mesh_of(section, geometry::doubled(geometry::subdivision_of(section, 24)));
  const solver::Field field = solver::field_of(mesh, problem.physics(), solver::LinearOptions{});
  const auto weight = [&](SpaceId space, double x) {
    solver::SpaceTemperatures temperatures(3, 0.0);
    temperatures[space] = 1.0;
    return solver::temperature_at(field, solver::temperatures(field, temperatures), {x, 0});
  };
  CHECK(weight(wall.inside, 1.2) == WithinAbs{0.717, 0.01});
  CHECK(weight(wall.porch, 1.2) == WithinAbs{0.283, 0.01});
  CHECK(weight(wall.outside, 1.2) == WithinAbs{0.0, 0.01});
  CHECK(weight(wall.inside, -0.2) == WithinAbs{0.671, 0.01});
  CHECK(weight(wall.porch, -0.2) == WithinAbs{0.025, 0.01});
  CHECK(weight(wall.outside, -0.2) == WithinAbs{0.303, 0.01});
  CHECK_FALSE(weight(wall.porch, 0.1) == WithinAbs{0.025, 0.01});  // the jump is near
}

}  // namespace quoin::testing
