// SPDX-License-Identifier: Apache-2.0
#include <doctest/doctest.h>

#include <numeric>
#include <vector>

#include "solver/scheme/assembly.hpp"
#include "tests/support/problem.hpp"
#include "tests/support/within.hpp"

namespace quoin::solver {
namespace {

using testing::Problem;
using testing::WithinAbs;
using testing::WithinRel;

constexpr double rounding = 1e-11;  // relative, of sparse solves with conductances from 0.01 to 1e4

const std::vector<std::pair<double, double>> layers = {
    {0.015, 0.80}, {0.06, 0.029}, {0.33, 0.77}, {0.002, 160}};

double resistance_of(const std::vector<std::pair<double, double>>& wall) {
  return std::accumulate(wall.begin(), wall.end(), 0.0, [](double sum, const auto& layer) {
    return sum + layer.first / layer.second;
  });
}

/// Bands of different materials side by side in the direction of the flow, each `width` high,
/// between fixed temperatures.
Problem side_by_side(const std::vector<double>& conductivities, double width) {
  Problem problem;
  const SpaceId inside = problem.space(1, 0.0), outside = problem.space(0, 0.0);
  double y = 0.0;
  for (const double conductivity : conductivities) {
    problem.paint(problem.material(conductivity), 0, 0.4, y, y + width);
    y += width;
  }
  problem.paint(inside, -0.1, 0, 0, y);
  problem.paint(outside, 0.4, 0.5, 0, y);
  return problem;
}

}  // namespace

TEST_CASE("layers in series are exact on any grid, by both schemes") {
  const Problem problem = testing::layered_wall(layers);
  const double exact = 1 / (0.13 + resistance_of(layers) + 0.04);
  for (const double density : {0.1, 1.0, 13.0}) {
    const Coupling coupling = problem.couplings(density).front();
    CHECK(coupling.high == WithinRel{exact, rounding});
    CHECK(coupling.low == WithinRel{exact, rounding});
  }
}

TEST_CASE("temperatures on the layers' faces are exact on the coarsest grid") {
  const Problem problem = testing::layered_wall(layers);
  const Field field = problem.field(0.1);
  const std::vector<double> nodes = temperatures(field, problem.temperatures());
  const double flow = 20 / (0.13 + resistance_of(layers) + 0.04);
  double x = 0.0, temperature = 20 - flow * 0.13;
  CHECK(temperature_at(field, nodes, {x, 0.3}) == WithinAbs{temperature, 1e-9});
  for (const auto& [thickness, conductivity] : layers) {
    x += thickness;
    temperature -= flow * thickness / conductivity;
    CHECK(temperature_at(field, nodes, {x, 0.3}) == WithinAbs{temperature, 1e-9});
  }
}

TEST_CASE("layers side by side are exact on any grid, by both schemes") {
  const std::vector<double> conductivities = {0.029, 230, 0.77, 1.15};
  const Problem problem = side_by_side(conductivities, 0.1);
  const double exact =
      std::accumulate(conductivities.begin(), conductivities.end(), 0.0) * 0.1 / 0.4;
  for (const double density : {0.1, 7.0}) {
    const Coupling coupling = problem.couplings(density).front();
    CHECK(coupling.high == WithinRel{exact, rounding});
    CHECK(coupling.low == WithinRel{exact, rounding});
  }
}

TEST_CASE("the conductance between two nodes is the sum over the two cells that share their edge") {
  Problem problem;
  const SpaceId air = problem.space(0, 0.1);
  problem.paint(problem.material(2.0), 0, 0.3, 0, 0.2);
  problem.paint(problem.material(5.0), 0, 0.3, 0.2, 0.6);
  problem.paint(air, -0.1, 0, 0, 0.6);
  const geometry::Section section = problem.section();
  const geometry::Mesh mesh = testing::even_mesh(section, 1.0);
  const Assembly assembly = node_centred(mesh, problem.physics());
  const FivePointOperator& network = assembly.network;
  CHECK(network.east[mesh.node(1, 0)] == WithinRel{2.0 * 0.1 / 0.3, 1e-14});
  CHECK(network.east[mesh.node(1, 1)] == WithinRel{2.0 * 0.1 / 0.3 + 5.0 * 0.2 / 0.3, 1e-14});
  CHECK(network.east[mesh.node(1, 2)] == WithinRel{5.0 * 0.2 / 0.3, 1e-14});
  CHECK(network.north[mesh.node(1, 0)] == WithinRel{2.0 * 0.15 / 0.2, 1e-14});
  CHECK(network.north[mesh.node(2, 1)] == WithinRel{5.0 * 0.15 / 0.4, 1e-14});
  CHECK(network.ground[mesh.node(1, 1)] == WithinRel{0.3 / 0.1, 1e-14});
  CHECK(network.ground[mesh.node(2, 1)] == 0.0);
  CHECK(network.east[mesh.node(0, 0)] == 0.0);  // in the air
}

TEST_CASE("cells are joined by the series conductance of their halves") {
  Problem problem = testing::layered_wall({{0.2, 2.0}, {0.4, 5.0}});
  const geometry::Section section = problem.section();
  const geometry::Mesh mesh = testing::even_mesh(section, 1.0);
  const Assembly assembly = cell_centred(mesh, problem.physics());
  CHECK(assembly.network.east[1] == WithinRel{1 / (0.1 / 2.0 + 0.2 / 5.0), 1e-14});
  CHECK(assembly.network.ground[1] == WithinRel{1 / (0.1 / 2.0 + 0.13), 1e-14});
  CHECK(assembly.network.ground[2] == WithinRel{1 / (0.2 / 5.0 + 0.04), 1e-14});
}

TEST_CASE("a surface without resistance fixes its nodes, where two meet to their mean") {
  Problem problem;
  const SpaceId warm = problem.space(20, 0.0), cold = problem.space(0, 0.0);
  problem.paint(problem.material(1.0), 0, 1, 0, 1);
  problem.paint(warm, 0, 1, 1, 1.1);
  problem.paint(cold, -0.1, 0, 0, 1);
  const Field field = problem.field(4);
  const std::vector<double> nodes = temperatures(field, problem.temperatures());
  CHECK(temperature_at(field, nodes, {0.5, 1}) == 20.0);
  CHECK(temperature_at(field, nodes, {0, 0.5}) == 0.0);
  CHECK(temperature_at(field, nodes, {0, 1}) == 10.0);
  REQUIRE(field.touching.size() == 1);
  CHECK(field.touching.front() == std::pair{warm, cold});
}

TEST_CASE("a gap carries no heat") {
  Problem problem = testing::layered_wall({{0.3, 0.8}});
  problem.paint(std::monostate{}, 0.1, 0.2, 0, 1);  // the whole height: the wall is cut in two
  const Field field = problem.field(4);
  CHECK(field.coupling[1] == WithinAbs{0.0, 1e-13});
}

TEST_CASE("a material that conducts nothing at all is a gap") {
  Problem problem = testing::layered_wall({{0.1, 0.8}, {0.1, 0.8}});
  problem.paint(problem.material(0.0), 0.08, 0.12, 0, 0.5);
  CHECK(problem.field(4).coupling[1] > 0.0);
}

TEST_CASE("a place a rounding off the surface has the temperature of the surface") {
  const Problem problem = testing::layered_wall({{0.3, 0.8}});
  const Field field = problem.field(4);
  const std::vector<double> nodes = temperatures(field, problem.temperatures());
  const double inside = temperature_at(field, nodes, {0, 0.5});
  const double outside = temperature_at(field, nodes, {0.3, 0.5});
  // 2e-6 m are a slip of rounding; at 38 K/m they would be 8e-5 K if they counted.
  CHECK(temperature_at(field, nodes, {-2e-6, 0.5}) == WithinAbs{inside, 1e-12});
  CHECK(temperature_at(field, nodes, {0.3 + 2e-6, 0.5}) == WithinAbs{outside, 1e-12});
  CHECK(temperature_at(field, nodes, {0.15, -2e-6}) == temperature_at(field, nodes, {0.15, 0}));
}

}  // namespace quoin::solver
