// SPDX-License-Identifier: Apache-2.0
#include "solver/gap.hpp"

#include <array>

namespace quoin::solver {
namespace {

/// Flow of the cell scheme in the direction of the axes through the four sides of each cell, W/m.
using SideFlows = std::vector<std::array<double, 4>>;

double& side(std::array<double, 4>& flows, CellSide which) {
  return flows[static_cast<std::size_t>(which)];
}

SideFlows side_flows(const Assembly& assembly, SpaceId air, const Per<SpaceId, SpaceId>& air_of,
                     const std::vector<double>& cells) {
  SideFlows flows(cells.size());
  const FivePointOperator& network = assembly.network;
  for (std::size_t n = 0; n < cells.size(); ++n) {
    if (network.east[n] > 0.0) {
      const double eastwards = network.east[n] * (cells[n] - cells[n + 1]);
      side(flows[n], CellSide::east) = side(flows[n + 1], CellSide::west) = eastwards;
    }
    if (network.north[n] > 0.0) {
      const double northwards = network.north[n] * (cells[n] - cells[n + network.nx]);
      side(flows[n], CellSide::north) = side(flows[n + network.nx], CellSide::south) = northwards;
    }
  }
  for (const AirLink& link : assembly.links) {
    const double into_air =
        link.conductance * (cells[link.unknown] - (air_of[link.space] == air ? 1.0 : 0.0));
    const bool forwards = link.side == CellSide::east || link.side == CellSide::north;
    side(flows[link.unknown], link.side) = forwards ? into_air : -into_air;
  }
  return flows;
}

/// The squared difference of two fluxes over a cell, one given on two opposite sides, the other on
/// the two sides between them, split by what could mend it.
struct Mismatch {
  double along = 0.0;   ///< finer strips across the flux
  double across = 0.0;  ///< finer strips along it
};

Mismatch mismatch(double flux_before, double flux_after, double flux_one_edge,
                  double flux_other_edge) {
  const double mean = (flux_before + flux_after) / 2 - (flux_one_edge + flux_other_edge) / 2;
  const double of_sides = (flux_after - flux_before) / 2;
  const double of_edges = (flux_other_edge - flux_one_edge) / 2;
  return {of_sides * of_sides + mean * mean / 2, of_edges * of_edges + mean * mean / 2};
}

}  // namespace

Blame gap_of(const geometry::Mesh& mesh, const Physics& physics, const Assembly& cell_assembly,
             SpaceId air, const std::vector<double>& nodes, const std::vector<double>& cells) {
  Blame gap = no_blame(mesh);
  const SideFlows flows = side_flows(cell_assembly, air, physics.air, cells);
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const auto* region = std::get_if<RegionId>(&mesh.cell(i, j).below);
      if (region == nullptr) continue;
      const double conductivity = physics.conductivity[*region];
      const double dx = mesh.x[i + 1] - mesh.x[i], dy = mesh.y[j + 1] - mesh.y[j];
      const std::size_t sw = mesh.node(i, j), se = sw + 1, nw = sw + mesh.nx(), ne = nw + 1;
      const auto& [west, east, south, north] = flows[j * mesh.columns() + i];
      const Mismatch x = mismatch(west / dy, east / dy, conductivity * (nodes[sw] - nodes[se]) / dx,
                                  conductivity * (nodes[nw] - nodes[ne]) / dx);
      const Mismatch y =
          mismatch(south / dx, north / dx, conductivity * (nodes[sw] - nodes[nw]) / dy,
                   conductivity * (nodes[se] - nodes[ne]) / dy);
      const double weight = dx * dy / conductivity;
      gap.columns[i] += weight * (x.along + y.across);
      gap.rows[j] += weight * (x.across + y.along);
    }
  }
  // The same on the surfaces, whose resistance is a layer without thickness.
  for (const AirLink& link : cell_assembly.links) {
    const std::size_t i = link.unknown % mesh.columns(), j = link.unknown / mesh.columns();
    const bool upright = link.side == CellSide::west || link.side == CellSide::east;
    const std::size_t from = mesh.node(link.side == CellSide::east ? i + 1 : i,
                                       link.side == CellSide::north ? j + 1 : j);
    const std::size_t to = upright ? from + mesh.nx() : from + 1;
    const double length = upright ? mesh.y[j + 1] - mesh.y[j] : mesh.x[i + 1] - mesh.x[i];
    const Facing looks = upright                        ? Facing::sideways
                         : link.side == CellSide::north ? Facing::up
                                                        : Facing::down;
    const double resistance =
        physics.surface_resistance(link.space, std::get<RegionId>(mesh.cell(i, j).below), looks);
    if (resistance == 0.0) continue;
    const double outside = physics.air[link.space] == air ? 1.0 : 0.0;
    const double flux = link.conductance * (cells[link.unknown] - outside) / length;
    const Mismatch one = mismatch(flux, flux, (nodes[from] - outside) / resistance,
                                  (nodes[to] - outside) / resistance);
    const double weight = length * resistance;
    (upright ? gap.columns[i] : gap.rows[j]) += weight * one.along;
    (upright ? gap.rows[j] : gap.columns[i]) += weight * one.across;
  }
  return gap;
}

}  // namespace quoin::solver
