// SPDX-License-Identifier: Apache-2.0
#include "solver/assembly.hpp"

#include <algorithm>
#include <map>

#include "geometry/surface.hpp"

namespace quoin::solver {
namespace {

/// Conductivity of a cell, 0 where it holds no material.
double conductivity_of(const geometry::Cell& cell, const Physics& physics) {
  const auto* region = std::get_if<RegionId>(&cell.below);
  return region != nullptr ? physics.conductivity[*region] : 0.0;
}

FivePointOperator empty_network(std::size_t nx, std::size_t ny) {
  const std::vector<double> zeros(nx * ny, 0.0);
  return {nx, ny, zeros, zeros, zeros};
}

}  // namespace

Assembly node_centred(const geometry::Mesh& mesh, const Physics& physics) {
  Assembly result{
      empty_network(mesh.nx(), mesh.ny()), {}, {}, std::vector<char>(mesh.nx() * mesh.ny())};
  FivePointOperator& network = result.network;
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    const double dy = mesh.y[j + 1] - mesh.y[j];
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const double conductivity = conductivity_of(mesh.cell(i, j), physics);
      if (conductivity == 0.0) continue;
      const double dx = mesh.x[i + 1] - mesh.x[i];
      const double across = conductivity * (dy / 2) / dx;
      const double along = conductivity * (dx / 2) / dy;
      network.east[mesh.node(i, j)] += across;
      network.east[mesh.node(i, j + 1)] += across;
      network.north[mesh.node(i, j)] += along;
      network.north[mesh.node(i + 1, j)] += along;
      for (const std::size_t node :
           {mesh.node(i, j), mesh.node(i + 1, j), mesh.node(i, j + 1), mesh.node(i + 1, j + 1)}) {
        result.solid[node] = 1;
      }
    }
  }
  std::map<std::size_t, std::vector<SpaceId>> fixed;
  for (const geometry::Face& face : geometry::faces(mesh)) {
    const double resistance = physics.surface_resistance(face.space, face.region, face.facing);
    for (const std::size_t node : {face.from, face.to}) {
      if (resistance > 0.0) {
        const double conductance = face.length / 2 / resistance;
        result.links.push_back({node, face.space, conductance, CellSide::west});
        network.ground[node] += conductance;
      } else if (auto& spaces = fixed[node];
                 std::find(spaces.begin(), spaces.end(), face.space) == spaces.end()) {
        spaces.push_back(face.space);
      }
    }
  }
  for (auto& [node, spaces] : fixed) result.fixed.push_back({node, std::move(spaces)});
  return result;
}

Assembly cell_centred(const geometry::Mesh& mesh, const Physics& physics) {
  const std::size_t columns = mesh.columns();
  Assembly result{
      empty_network(columns, mesh.rows()), {}, {}, std::vector<char>(columns * mesh.rows())};
  FivePointOperator& network = result.network;
  const auto dx = [&](std::size_t i) { return mesh.x[i + 1] - mesh.x[i]; };
  const auto dy = [&](std::size_t j) { return mesh.y[j + 1] - mesh.y[j]; };

  // Joins a cell to the air beyond one of its sides, where there is air.
  const auto join_air = [&](std::size_t cell, const geometry::Cell& here, double depth,
                            const geometry::Cell& beyond, double width, Facing looks,
                            CellSide side) {
    const auto* region = std::get_if<RegionId>(&here.below);
    const auto* space = std::get_if<SpaceId>(&beyond.below);
    if (region == nullptr || space == nullptr) return;
    const double resistance = physics.surface_resistance(*space, *region, looks);
    const double conductance = width / (depth / 2 / physics.conductivity[*region] + resistance);
    result.links.push_back({cell, *space, conductance, side});
    network.ground[cell] += conductance;
  };
  // Conductance between two neighbouring cells of material, 0 where either holds none.
  const auto between = [&](const geometry::Cell& one, double one_depth, const geometry::Cell& other,
                           double other_depth, double width) {
    const double first = conductivity_of(one, physics);
    const double second = conductivity_of(other, physics);
    if (first == 0.0 || second == 0.0) return 0.0;
    return width / (one_depth / 2 / first + other_depth / 2 / second);
  };
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < columns; ++i) {
      const std::size_t here = j * columns + i;
      const geometry::Cell& cell = mesh.cell(i, j);
      result.solid[here] = conductivity_of(cell, physics) > 0.0;
      if (i + 1 < columns) {
        const geometry::Cell& east = mesh.cell(i + 1, j);
        network.east[here] = between(cell, dx(i), east, dx(i + 1), dy(j));
        join_air(here, cell, dx(i), east, dy(j), Facing::sideways, CellSide::east);
        join_air(here + 1, east, dx(i + 1), cell, dy(j), Facing::sideways, CellSide::west);
      }
      if (j + 1 < mesh.rows()) {
        const geometry::Cell& north = mesh.cell(i, j + 1);
        network.north[here] = between(cell, dy(j), north, dy(j + 1), dx(i));
        join_air(here, cell, dy(j), north, dx(i), Facing::up, CellSide::north);
        join_air(here + columns, north, dy(j + 1), cell, dx(i), Facing::down, CellSide::south);
      }
    }
  }
  return result;
}

}  // namespace quoin::solver
