// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <cmath>
#include <vector>

#include "geometry/recipe.hpp"
#include "solver/findings/plain.hpp"
#include "solver/scheme/network.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::testing {
namespace {

const SpaceId room(0), outside(1);

using Layers = std::vector<std::pair<double, double>>;

/// A window jamb: psi by the structural opening, and the lowest factor.
struct Jamb {
  double psi;
  double factor;
  geometry::Point coldest;
};

Jamb jamb(const Layers& wall, const Layers& lining) {
  Problem problem;
  geometry::Reveal reveal;
  reveal.inside = problem.space(1, 0.13);
  reveal.outside = problem.space(0, 0.04);
  for (const auto& [thickness, conductivity] : wall) {
    reveal.layers.push_back({problem.material(conductivity), thickness});
  }
  for (const auto& [thickness, conductivity] : lining) {
    reveal.lining.push_back({problem.material(conductivity), thickness});
  }
  reveal.frame = problem.material(0.13, false);
  reveal.frame_setback = 0.1;
  const geometry::Drawing drawing = geometry::drawing_of(reveal);
  const solver::Solution solution = solver::solution_of({geometry::section_of(drawing.sheet),
                                                         problem.physics(),
                                                         problem.temperatures(),
                                                         {room},
                                                         outside,
                                                         {},
                                                         5e-4,
                                                         2e-4},
                                                        {});
  const auto& coldest = solution.airs.front().coldest;
  return {solver::linear_transmittances(drawing.flanks, solution).back().value.value,
          coldest.factor.value, coldest.place};
}

/// The factor in the angle of a corner by the cell-centred scheme on a uniform grid: the nearest
/// cell's temperature carried on through half a cell to the face.
double factor_sampled_at_face(const Problem& corner, double spacing, double resistance,
                              double conductivity, double thickness) {
  const geometry::Mesh mesh = even_mesh(corner.section(), spacing);
  const solver::Network network(solver::cell_centred(mesh, corner.physics()), {});
  const solver::Basis basis = network.basis(corner.physics().air);
  // The cell beside the angle with a face to the room: on the left of x = thickness, just above
  // y = thickness.
  std::size_t i = 0, j = 0;
  while (mesh.x[i + 1] < thickness - 1e-9) ++i;
  while (mesh.y[j] < thickness - 1e-9) ++j;
  const double cell = basis.g[0][j * mesh.columns() + i];
  const double half = (mesh.x[i + 1] - mesh.x[i]) / 2;
  return cell + (1 - cell) * (half / conductivity) / (half / conductivity + resistance);
}

double factor_at_node(const Problem& corner, double spacing, double thickness) {
  const solver::Field field = solver::field_of(even_mesh(corner.section(), spacing),
                                               corner.physics(), solver::LinearOptions{});
  return solver::temperature_at(field, solver::temperatures(field, corner.temperatures()),
                                {thickness, thickness});
}

}  // namespace

// Source of the corners: computed by two independent discretisations that bracket the values.

TEST_CASE("T7, a brick corner, has its factor, its coupling and a bracket that holds both") {
  const solver::Solution solution =
      external_corner(0.300, 0.75, 0.13).solution({room}, outside, 0.0005, 5e-5);
  CHECK(solution.accurate);
  const solver::Spot& spot = solution.airs.front().coldest;
  CHECK(spot.place.x == WithinAbs{0.3, 1e-12});
  CHECK(spot.place.y == WithinAbs{0.3, 1e-12});
  CHECK(spot.factor.value == WithinAbs{0.62146, 0.0005});  // as asked for
  CHECK(std::abs(spot.factor.value - 0.62146) <= spot.factor.band + 5e-6);
  const solver::Coupling& bracket = solution.couplings.front();
  CHECK(bracket.low <= 3.72876 + 5e-6);  // known to five decimals
  CHECK(bracket.high >= 3.72876 - 5e-6);
  CHECK(bracket.high - bracket.low <= 1e-4 * 3.72876);
  CHECK(bracket.value == WithinRel{3.72876, 1e-4});
}

TEST_CASE("T7 by default accuracy is inside its bands, and they are as narrow as promised") {
  const solver::Solution solution =
      external_corner(0.300, 0.75, 0.13).solution({room}, outside, 0.002, 0.001);
  const solver::Estimate& factor = solution.airs.front().coldest.factor;
  CHECK(factor.band <= 0.002);
  CHECK(std::abs(factor.value - 0.62146) <= factor.band + 5e-6);
  CHECK(solution.couplings.front().value == WithinRel{3.72876, 3e-4});  // the middle is better
}

TEST_CASE("T7b, with the resistance of a still corner, has its factor, coupling and U") {
  const solver::Solution solution =
      external_corner(0.330, 0.77, 0.25).solution({room}, outside, 0.0005, 5e-5);
  CHECK(solution.airs.front().coldest.factor.value == WithinAbs{0.4995, 0.0005});
  CHECK(solution.couplings.front().value == WithinRel{2.93820, 5e-5});
  const geometry::Flank flank{"wall", {{RegionId(0), 0.330}}, room, outside, 2.0, 2.0, 2.66};
  const solver::PlainPart plain = solver::plain_part(
      flank, solution.physics, solution.physics, external_corner(0.330, 0.77, 0.25).temperatures());
  CHECK(plain.transmittance == WithinAbs{1.39165, 5e-6});
  CHECK(plain.surface_factor == WithinAbs{0.6521, 5e-5});
  const auto psi = solver::linear_transmittances({flank}, solution);
  CHECK(psi.front().value.value == WithinAbs{0.1549, 2e-4});
  CHECK(psi.back().value.value == WithinAbs{-0.7636, 2e-4});
}

TEST_CASE("T7's psi is 0.21999 by internal and -0.83264 by external dimensions") {
  const solver::Solution solution =
      external_corner(0.300, 0.75, 0.13).solution({room}, outside, {}, 2e-5);
  const geometry::Flank flank{"wall", {{RegionId(0), 0.300}}, room, outside, 2.0, 2.0, 2.6};
  const auto psi = solver::linear_transmittances({flank}, solution);
  CHECK(psi.front().value.value == WithinAbs{0.21999, 1e-4});
  CHECK(psi.back().value.value == WithinAbs{-0.83264, 1e-4});
}

TEST_CASE("a cell-centred field sampled at the faces misses T7's factor, nodes meet it") {
  const Problem corner = external_corner(0.300, 0.75, 0.13);
  CHECK(factor_at_node(corner, 0.02, 0.3) == WithinAbs{0.62146, 0.0015});
  const double sampled = factor_sampled_at_face(corner, 0.02, 0.13, 0.75, 0.3);
  CHECK_FALSE(sampled == WithinAbs{0.62146, 0.0015});
  CHECK(sampled > 0.62146 + 0.005);  // and on the unsafe side
}

// Source of the jambs: computed with an independent program; brick 330 mm 0.77, lime plaster 15 mm
// 0.80 as the face of wall and reveal, frame 70 mm of 0.13, 100 mm of it modelled, its outer face
// 100 mm behind the wall's. Known to three decimals.

TEST_CASE("a bare jamb has its psi by the structural opening, coldest at the frame") {
  const Jamb bare = jamb({{0.015, 0.80}, {0.33, 0.77}}, {{0.015, 0.80}});
  CHECK(bare.psi == WithinAbs{0.153, 0.0015});
  CHECK(bare.factor == WithinAbs{0.674, 0.0015});
  CHECK(bare.coldest.x == WithinAbs{0.015, 1e-9});
  CHECK(bare.coldest.y == WithinAbs{-0.345 + 0.17, 0.003});  // the frame edge
}

TEST_CASE("insulating the wall without the reveal makes the reveal colder, lining it warmer") {
  const Layers insulated = {{0.015, 0.80}, {0.06, 0.040}, {0.33, 0.77}};
  const Jamb wall_only = jamb(insulated, {{0.015, 0.80}});
  CHECK(wall_only.psi == WithinAbs{0.345, 0.0015});
  CHECK(wall_only.factor == WithinAbs{0.606, 0.0015});
  const Jamb both = jamb(insulated, {{0.015, 0.80}, {0.02, 0.040}});
  CHECK(both.psi == WithinAbs{0.144, 0.0015});
  CHECK(both.factor == WithinAbs{0.742, 0.0015});
  const Jamb bare = jamb({{0.015, 0.80}, {0.33, 0.77}}, {{0.015, 0.80}});
  CHECK(wall_only.factor < bare.factor - 0.05);
  CHECK(both.factor > bare.factor + 0.05);
}

}  // namespace quoin::testing
