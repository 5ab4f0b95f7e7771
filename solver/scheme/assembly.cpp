// SPDX-License-Identifier: Apache-2.0
#include "solver/scheme/assembly.hpp"

#include <algorithm>
#include <map>
#include <optional>

#include "geometry/surface.hpp"

namespace quoin::solver {
namespace {

using geometry::CellSide;
using geometry::is_solid;

/// Conductivity of a fill, 0 where it is no material.
double conductivity_of(const geometry::Fill& fill, const Physics& physics) {
  const auto* region = std::get_if<RegionId>(&fill);
  return region != nullptr ? physics.conductivity[*region] : 0.0;
}

FivePointOperator empty_network(std::size_t nx, std::size_t ny) {
  const std::vector<double> zeros(nx * ny, 0.0);
  return {nx, ny, zeros, zeros, zeros};
}

/// The cell behind a face and how the face lies on it.
struct FaceCell {
  std::size_t cell = 0;
  std::optional<CellSide> side;  ///< absent: its diagonal
  double depth = 0.0;            ///< of the cell behind the side, m
};

FaceCell cell_of(const geometry::Mesh& mesh, const geometry::Face& face) {
  const std::size_t nx = mesh.nx();
  const std::size_t from = mesh.on_grid(face.from), to = mesh.on_grid(face.to);
  const std::size_t i = std::min(from % nx, to % nx);
  const std::size_t j = std::min(from / nx, to / nx);
  const auto at = [&](std::size_t column, std::size_t row, std::optional<CellSide> side,
                      double depth) {
    return FaceCell{row * mesh.columns() + column, side, depth};
  };
  // The material lies on the left of the way from `from` to `to`.
  if (from / nx == to / nx) {
    if (from < to) return at(i, j, CellSide::south, mesh.y[j + 1] - mesh.y[j]);
    return at(i, j - 1, CellSide::north, mesh.y[j] - mesh.y[j - 1]);
  }
  if (from % nx == to % nx) {
    if (from < to) return at(i - 1, j, CellSide::east, mesh.x[i] - mesh.x[i - 1]);
    return at(i, j, CellSide::west, mesh.x[i + 1] - mesh.x[i]);
  }
  return at(i, j, std::nullopt, 0.0);
}

/// The nodes of a mesh, each once.
struct PlainNodes {
  const geometry::Mesh& mesh;

  [[nodiscard]] std::size_t nx() const { return mesh.nx(); }
  [[nodiscard]] std::size_t ny() const { return mesh.ny(); }
  [[nodiscard]] std::size_t size() const { return mesh.nodes(); }
  [[nodiscard]] std::size_t corner(std::size_t i, std::size_t j, bool east, bool north) const {
    return mesh.corner(i, j, east, north);
  }
};

/// Control volumes around nodes, told by the corners of the cells that they are.
template <class Nodes>
Assembly around_nodes(const geometry::Mesh& mesh, const Nodes& nodes, const Physics& physics) {
  Assembly result{empty_network(nodes.nx(), nodes.ny()), {}, {}, std::vector<char>(nodes.size())};
  FivePointOperator& network = result.network;
  const std::size_t grid = network.size();
  result.further_ground.assign(nodes.size() - grid, 0.0);
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    const double dy = mesh.y[j + 1] - mesh.y[j];
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const geometry::Cell& cell = mesh.cell(i, j);
      if (!is_solid(cell)) continue;
      const double dx = mesh.x[i + 1] - mesh.x[i];
      const std::size_t sw = nodes.corner(i, j, false, false), se = nodes.corner(i, j, true, false);
      const std::size_t nw = nodes.corner(i, j, false, true), ne = nodes.corner(i, j, true, true);
      // Along each side half the cell conducts, as far as the fill at that side does.
      const auto along = [&](CellSide side, std::vector<double>& direct, std::size_t from,
                             std::size_t to, double half_width, double length) {
        const double conductivity = conductivity_of(cell.at(side), physics);
        if (conductivity == 0.0) return;
        const double conductance = conductivity * half_width / length;
        if (from < grid && to < grid) {
          direct[from] += conductance;
        } else {
          result.further_links.push_back({from, to, conductance});
        }
        result.solid[from] = result.solid[to] = 1;
      };
      along(CellSide::south, network.east, sw, se, dy / 2, dx);
      along(CellSide::north, network.east, nw, ne, dy / 2, dx);
      along(CellSide::west, network.north, sw, nw, dx / 2, dy);
      along(CellSide::east, network.north, se, ne, dx / 2, dy);
    }
  }
  std::map<std::size_t, std::vector<SpaceId>> fixed;
  for (const geometry::Face& face : geometry::faces(mesh)) {
    const double resistance = physics.surface_resistance(face.space, face.region, face.facing);
    const FaceCell at = cell_of(mesh, face);
    const std::size_t i = at.cell % mesh.columns(), j = at.cell / mesh.columns();
    for (const std::size_t end : {face.from, face.to}) {
      const std::size_t place = mesh.on_grid(end);
      const std::size_t node = nodes.corner(i, j, place % mesh.nx() != i, place / mesh.nx() != j);
      if (resistance > 0.0) {
        const double conductance = face.length / 2 / resistance;
        result.links.push_back({node, face.space, conductance, {}});
        (node < grid ? network.ground[node] : result.further_ground[node - grid]) += conductance;
      } else if (auto& spaces = fixed[node];
                 std::find(spaces.begin(), spaces.end(), face.space) == spaces.end()) {
        spaces.push_back(face.space);
      }
    }
  }
  for (auto& [node, spaces] : fixed) result.fixed.push_back({node, std::move(spaces)});
  return result;
}

}  // namespace

Assembly node_centred(const geometry::Mesh& mesh, const Physics& physics) {
  // Membranes resist vapour only: without them every node is there once.
  return around_nodes(mesh, PlainNodes{mesh}, physics);
}

Assembly node_centred(const geometry::Mesh& mesh, const geometry::TwoSided& nodes,
                      const Physics& physics) {
  return around_nodes(mesh, nodes, physics);
}

Assembly cell_centred(const geometry::Mesh& mesh, const Physics& physics) {
  const std::size_t columns = mesh.columns();
  Assembly result{
      empty_network(columns, mesh.rows()), {}, {}, std::vector<char>(columns * mesh.rows())};
  FivePointOperator& network = result.network;
  const auto dx = [&](std::size_t i) { return mesh.x[i + 1] - mesh.x[i]; };
  const auto dy = [&](std::size_t j) { return mesh.y[j + 1] - mesh.y[j]; };
  // Conductance between two neighbouring cells, 0 where either holds no material at their common
  // side.
  const auto between = [&](const geometry::Fill& one, double one_depth, const geometry::Fill& other,
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
      result.solid[here] = is_solid(cell);
      if (i + 1 < columns) {
        network.east[here] = between(cell.at(CellSide::east), dx(i),
                                     mesh.cell(i + 1, j).at(CellSide::west), dx(i + 1), dy(j));
      }
      if (j + 1 < mesh.rows()) {
        network.north[here] = between(cell.at(CellSide::north), dy(j),
                                      mesh.cell(i, j + 1).at(CellSide::south), dy(j + 1), dx(i));
      }
    }
  }
  for (const geometry::Face& face : geometry::faces(mesh)) {
    const FaceCell at = cell_of(mesh, face);
    const double inner = at.depth == 0.0 ? 0.0 : at.depth / 2 / physics.conductivity[face.region];
    const double resistance =
        inner + physics.surface_resistance(face.space, face.region, face.facing);
    if (resistance == 0.0) {
      result.fixed.push_back({at.cell, {face.space}});
      continue;
    }
    result.links.push_back({at.cell, face.space, face.length / resistance, at.side});
    network.ground[at.cell] += face.length / resistance;
  }
  return result;
}

}  // namespace quoin::solver
