// SPDX-License-Identifier: Apache-2.0
#include "solver/scheme/field.hpp"

#include <algorithm>
#include <limits>
#include <set>
#include <utility>

#include "solver/scheme/assembly.hpp"
#include "solver/scheme/network.hpp"

namespace quoin::solver {
namespace {

/// The cell of an axis that holds a coordinate; the nearest one where it lies beyond the ends.
std::size_t cell_at(const std::vector<double>& lines, double at) {
  const auto above = std::upper_bound(lines.begin() + 1, lines.end() - 1, at);
  return static_cast<std::size_t>(above - lines.begin()) - 1;
}

double share(const std::vector<double>& lines, std::size_t cell, double at) {
  return std::clamp((at - lines[cell]) / (lines[cell + 1] - lines[cell]), 0.0, 1.0);
}

/// Temperatures at the corners of a cell.
struct Corners {
  double sw, se, nw, ne;
};

/// How far a place at the shares u, v of a cell lies outside its material, as a share; 0: within
/// it.
double beyond_material(const geometry::Cell& cell, double u, double v) {
  if (geometry::is_solid(cell.below) && geometry::is_solid(cell.above)) return 0.0;
  const double above =
      cell.split == geometry::Split::rising ? v - u : u + v - 1;  // above the diagonal
  return std::max(0.0, geometry::is_solid(cell.below) ? above : -above);
}

/// The temperature at the shares u, v of a cell's width and height: bilinear in an undivided cell,
/// linear in the triangle of a divided one, in the solid triangle where only one is.
double within(const geometry::Cell& cell, const Corners& t, double u, double v) {
  if (cell.split == geometry::Split::none) {
    return (1 - v) * ((1 - u) * t.sw + u * t.se) + v * ((1 - u) * t.nw + u * t.ne);
  }
  const bool rising = cell.split == geometry::Split::rising;
  const bool lies_below = rising ? v <= u : u + v <= 1;
  const bool below =
      geometry::is_solid(cell.below) && (lies_below || !geometry::is_solid(cell.above));
  if (rising) {
    return below ? t.sw + u * (t.se - t.sw) + v * (t.ne - t.se)
                 : t.sw + u * (t.ne - t.nw) + v * (t.nw - t.sw);
  }
  return below ? t.sw + u * (t.se - t.sw) + v * (t.nw - t.sw)
               : t.ne - (1 - u) * (t.ne - t.nw) - (1 - v) * (t.ne - t.se);
}

}  // namespace

std::vector<double> temperatures(const Field& field, const SpaceTemperatures& spaces) {
  return superposed(field.basis, field.airs, spaces);
}

double temperature_at(const Field& field, const std::vector<double>& nodes, geometry::Point place) {
  const geometry::Mesh& mesh = field.mesh;
  // On a line between cells only some may hold material, and the place may be a rounding off the
  // line: of the cells about it the one whose material reaches nearest counts.
  double nearest = std::numeric_limits<double>::infinity();
  double temperature = nodes[mesh.node(cell_at(mesh.x, place.x), cell_at(mesh.y, place.y))];
  for (const double nudge_y : {0.0, -geometry::snap, geometry::snap}) {
    for (const double nudge_x : {0.0, -geometry::snap, geometry::snap}) {
      const std::size_t i = cell_at(mesh.x, place.x + nudge_x);
      const std::size_t j = cell_at(mesh.y, place.y + nudge_y);
      const geometry::Cell& cell = mesh.cell(i, j);
      if (!geometry::is_solid(cell)) continue;
      const double u = share(mesh.x, i, place.x);
      const double v = share(mesh.y, j, place.y);
      const double away = beyond_material(cell, u, v);
      if (away >= nearest - 1e-9) continue;
      nearest = away;
      const auto at = [&](bool east, bool north) { return nodes[mesh.corner(i, j, east, north)]; };
      const Corners corners = {at(false, false), at(true, false), at(false, true), at(true, true)};
      temperature = within(cell, corners, u, v);
    }
  }
  return temperature;
}

Per<SpaceId, double> flows(const Field& field, const SpaceTemperatures& spaces) {
  Per<SpaceId, double> result(spaces.size(), 0.0);
  for (std::size_t a = 0; a < field.airs.size(); ++a) {
    for (const SpaceId space : geometry::ids(spaces)) {
      result[space] += spaces[field.airs[a]] * field.space_flow[a * spaces.size() + space.index];
    }
  }
  return result;
}

namespace {

std::vector<std::pair<SpaceId, SpaceId>> touching_airs(const Assembly& assembly,
                                                       const Per<SpaceId, SpaceId>& air) {
  std::set<std::pair<SpaceId, SpaceId>> pairs;
  for (const FixedNode& fixed : assembly.fixed) {
    for (const SpaceId one : fixed.spaces) {
      for (const SpaceId other : fixed.spaces) {
        if (air[one] < air[other]) pairs.insert({air[one], air[other]});
      }
    }
  }
  return {pairs.begin(), pairs.end()};
}

}  // namespace

Field field_of(geometry::Mesh mesh, const Physics& physics, const Network& network) {
  Basis basis = network.basis(physics.air);
  Field field;
  field.coupling = couplings(basis, physics.air);
  field.touching = touching_airs(network.assembly(), physics.air);
  field.mesh = std::move(mesh);
  field.airs = std::move(basis.airs);
  field.basis = std::move(basis.g);
  field.solid = network.assembly().solid;
  field.space_flow = std::move(basis.space_flow);
  field.residual = basis.residual;
  field.iterations = basis.iterations;
  field.fell_back = basis.fell_back;
  return field;
}

Field field_of(geometry::Mesh mesh, const Physics& physics, const LinearOptions& options) {
  const Network network(node_centred(mesh, physics), options);
  return field_of(std::move(mesh), physics, network);
}

}  // namespace quoin::solver
