// SPDX-License-Identifier: Apache-2.0
#include "solver/accuracy/place_value.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace quoin::solver {
namespace {

/// The interval of `lines` that `at` lies in, or ends.
std::size_t interval(const std::vector<double>& lines, double at) {
  const auto after = std::upper_bound(lines.begin(), lines.end(), at);
  const auto found =
      static_cast<std::size_t>(std::max<std::ptrdiff_t>(0, after - lines.begin() - 1));
  return std::min(found, lines.size() - 2);
}

/// The node of material nearest to a place in the grid.
std::size_t nearest_node(const Field& field, geometry::Point place) {
  const geometry::Mesh& mesh = field.mesh;
  const std::size_t i = interval(mesh.x, place.x), j = interval(mesh.y, place.y);
  std::size_t nearest = mesh.node(i, j);
  double shortest = std::numeric_limits<double>::infinity();
  for (const std::size_t node :
       {mesh.node(i, j), mesh.node(i + 1, j), mesh.node(i, j + 1), mesh.node(i + 1, j + 1)}) {
    const geometry::Point at = mesh.place(node);
    const double distance = std::hypot(at.x - place.x, at.y - place.y);
    if (field.solid[node] != 0 && distance < shortest) {
      shortest = distance;
      nearest = node;
    }
  }
  return nearest;
}

/// A source of 1 W/m at a node.
std::vector<double> source_at(std::size_t node, std::size_t nodes) {
  std::vector<double> source(nodes);
  source[node] = 1.0;
  return source;
}

/// The same in equal parts in the cells of material that touch the node.
std::vector<double> source_around(std::size_t node, const geometry::Mesh& mesh,
                                  const std::vector<char>& solid) {
  std::vector<double> source(solid.size());
  std::vector<std::size_t> touching;
  const std::size_t i = mesh.on_grid(node) % mesh.nx(), j = mesh.on_grid(node) / mesh.nx();
  for (const bool north : {true, false}) {  // whether the node is the cell's northern corner
    for (const bool east : {true, false}) {
      const std::size_t column = east ? i - 1 : i, row = north ? j - 1 : j;  // wraps at 0
      if (column >= mesh.columns() || row >= mesh.rows()) continue;
      const std::size_t cell = row * mesh.columns() + column;
      if (solid[cell] != 0 && mesh.corner(column, row, east, north) == node)
        touching.push_back(cell);
    }
  }
  for (const std::size_t cell : touching) source[cell] = 1.0 / static_cast<double>(touching.size());
  return source;
}

bool is_fixed(const Assembly& assembly, std::size_t node) {
  return std::any_of(assembly.fixed.begin(), assembly.fixed.end(),
                     [node](const FixedNode& fixed) { return fixed.node == node; });
}

}  // namespace

BothTemperatures::BothTemperatures(const BothSchemes& both, const Physics& physics,
                                   const SpaceTemperatures& temperatures)
    : nodes_(solver::temperatures(both.field, temperatures)),
      cells_(superposed(both.by_cells.g, both.by_cells.airs, temperatures)),
      spaces_(temperatures.size()) {
  for (const SpaceId space : geometry::ids(spaces_)) {
    spaces_[space] = temperatures[physics.air[space]];
  }
}

PlaceValue value_at_node(const BothSchemes& both, const Physics& physics,
                         const BothTemperatures& temperatures, std::size_t node) {
  const geometry::Mesh& mesh = both.field.mesh;
  const double value = temperatures.nodes()[node];
  if (is_fixed(both.nodes.assembly(), node)) return {{value, 0.0, 0.0}, no_blame(mesh)};
  const std::vector<double> by_nodes =
      both.nodes.response(source_at(node, both.field.solid.size()));
  const std::vector<double> by_cells =
      both.cells.response(source_around(node, mesh, both.cells.assembly().solid));
  const Twin influence{by_nodes, by_cells, Per<SpaceId, double>(physics.air.size())};
  Gap gap = gap_between(mesh, physics, both.cells.assembly(), temperatures.twin(), influence);
  return {{value, gap.sum / 2, total(gap.blame) / 2}, std::move(gap.blame)};
}

PlaceValue place_value(const BothSchemes& both, const Physics& physics,
                       const BothTemperatures& temperatures, geometry::Point place) {
  const std::size_t node = nearest_node(both.field, place);
  PlaceValue result = value_at_node(both, physics, temperatures, node);
  // At a node its own value: where fans of material touch there are others at that place.
  if (both.field.mesh.place(node) != place)
    result.value.value = temperature_at(both.field, temperatures.nodes(), place);
  return result;
}

}  // namespace quoin::solver
