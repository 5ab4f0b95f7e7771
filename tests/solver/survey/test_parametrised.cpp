// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <vector>

#include "solver/survey/parametrised.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

/// Two squares that touch in a point alone, each between a room and the yard.
Problem touching_squares() {
  Problem problem;
  const SpaceId room = problem.space(20, 0.13), yard = problem.space(0, 0.04);
  const RegionId one = problem.material(0.8), other = problem.material(0.2);
  problem.paint(one, 0, 1, 0, 1);
  problem.paint(other, 1, 2, 1, 2);
  problem.paint(room, -0.1, 0, 0, 1);
  problem.paint(yard, 0, 1, -0.1, 0);
  problem.paint(room, 2, 2.1, 1, 2);
  problem.paint(yard, 1, 2, 2, 2.1);
  return problem;
}

}  // namespace

TEST_CASE(
    "fields for any conductivities are those of the solver where materials touch in a point") {
  const Problem problem = touching_squares();
  const solver::Field field = problem.field(8);
  REQUIRE_FALSE(field.mesh.further.empty());
  solver::Parametrised section{field.mesh, 2, geometry::faces(field.mesh), {}, {0, 1}, 2};
  for (const geometry::Face& face : section.faces) section.group.push_back(face.space.index);
  const solver::Setting setting{{0.8, 0.2}, {1 / 0.13, 1 / 0.04}};
  std::vector<solver::Watched> nodes;
  for (std::size_t n = 0; n < field.mesh.nodes(); ++n) {
    if (field.solid[n] != 0) nodes.push_back({{n, 1.0}});
  }
  const std::vector<double> shares = solver::full_shares(section, setting, nodes, {});
  double worst = 0.0;
  for (std::size_t k = 0; k < nodes.size(); ++k)
    worst = std::max(worst, std::abs(shares[2 * k] - field.basis[0][nodes[k][0].first]));
  CHECK(worst < 1e-9);  // the same network by the same method
}

}  // namespace quoin::testing
