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
        result.links.push_back({node, face.space, conductance});
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

  // Joins two neighbouring cells, or a cell and the space beside it, across a side of given width.
  const auto join = [&](std::size_t low, double low_depth, const geometry::Cell& low_cell,
                        std::size_t high, double high_depth, const geometry::Cell& high_cell,
                        double width, std::vector<double>& conductances, Facing low_looks,
                        Facing high_looks) {
    const double low_conductivity = conductivity_of(low_cell, physics);
    const double high_conductivity = conductivity_of(high_cell, physics);
    if (low_conductivity > 0.0 && high_conductivity > 0.0) {
      conductances[low] =
          width / (low_depth / 2 / low_conductivity + high_depth / 2 / high_conductivity);
      return;
    }
    const auto to_air = [&](std::size_t cell, double depth, double conductivity,
                            const geometry::Fill& fill, const geometry::Fill& beyond,
                            Facing looks) {
      const auto* space = std::get_if<SpaceId>(&beyond);
      if (space == nullptr) return;
      const double resistance = physics.surface_resistance(*space, std::get<RegionId>(fill), looks);
      const double conductance = width / (depth / 2 / conductivity + resistance);
      result.links.push_back({cell, *space, conductance});
      network.ground[cell] += conductance;
    };
    if (low_conductivity > 0.0) {
      to_air(low, low_depth, low_conductivity, low_cell.below, high_cell.below, low_looks);
    }
    if (high_conductivity > 0.0) {
      to_air(high, high_depth, high_conductivity, high_cell.below, low_cell.below, high_looks);
    }
  };
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < columns; ++i) {
      const std::size_t here = j * columns + i;
      result.solid[here] = conductivity_of(mesh.cell(i, j), physics) > 0.0;
      if (i + 1 < columns) {
        join(here, dx(i), mesh.cell(i, j), here + 1, dx(i + 1), mesh.cell(i + 1, j), dy(j),
             network.east, Facing::sideways, Facing::sideways);
      }
      if (j + 1 < mesh.rows()) {
        join(here, dy(j), mesh.cell(i, j), here + columns, dy(j + 1), mesh.cell(i, j + 1), dx(i),
             network.north, Facing::up, Facing::down);
      }
    }
  }
  return result;
}

}  // namespace quoin::solver
