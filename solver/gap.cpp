// SPDX-License-Identifier: Apache-2.0
#include "solver/gap.hpp"

#include <array>

#include "geometry/surface.hpp"

namespace quoin::solver {
namespace {

using geometry::CellSide;
using geometry::is_solid;

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
    if (!link.side) continue;
    const bool forwards = link.side == CellSide::east || link.side == CellSide::north;
    side(flows[link.unknown], *link.side) = forwards ? into_air : -into_air;
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
      const geometry::Cell& cell = mesh.cell(i, j);
      if (!is_solid(cell)) continue;
      const double dx = mesh.x[i + 1] - mesh.x[i], dy = mesh.y[j + 1] - mesh.y[j];
      const std::size_t sw = mesh.node(i, j), se = sw + 1, nw = sw + mesh.nx(), ne = nw + 1;
      const auto& [west, east, south, north] = flows[j * mesh.columns() + i];
      // Flux differences as if of conductivity 1: temperatures of the nodes enter by their slopes.
      const double slope_south = (nodes[sw] - nodes[se]) / dx,
                   slope_north = (nodes[nw] - nodes[ne]) / dx;
      const double slope_west = (nodes[sw] - nodes[nw]) / dy,
                   slope_east = (nodes[se] - nodes[ne]) / dy;
      if (cell.split == geometry::Split::none) {
        const double conductivity = physics.conductivity[std::get<RegionId>(cell.below)];
        const Mismatch x =
            mismatch(west / dy, east / dy, conductivity * slope_south, conductivity * slope_north);
        const Mismatch y =
            mismatch(south / dx, north / dx, conductivity * slope_west, conductivity * slope_east);
        const double weight = dx * dy / conductivity;
        gap.columns[i] += weight * (x.along + y.across);
        gap.rows[j] += weight * (x.across + y.along);
        continue;
      }
      // In a triangle both fluxes are uniform: finer columns and finer rows mend it together.
      const bool rising = cell.split == geometry::Split::rising;
      const auto triangle = [&](const geometry::Fill& fill, double flux_x, double slope_x,
                                double flux_y, double slope_y) {
        const auto* region = std::get_if<RegionId>(&fill);
        if (region == nullptr) return;
        const double conductivity = physics.conductivity[*region];
        const double off_x = flux_x - conductivity * slope_x,
                     off_y = flux_y - conductivity * slope_y;
        const double amount = dx * dy / 2 / conductivity * (off_x * off_x + off_y * off_y);
        gap.columns[i] += amount / 2;
        gap.rows[j] += amount / 2;
      };
      triangle(cell.below, (rising ? east : west) / dy, slope_south, south / dx,
               rising ? slope_east : slope_west);
      triangle(cell.above, (rising ? west : east) / dy, slope_north, north / dx,
               rising ? slope_west : slope_east);
    }
  }
  // The same on the surfaces, whose resistance is a layer without thickness.
  const std::vector<geometry::Face> faces = geometry::faces(mesh);
  auto link = cell_assembly.links.begin();
  for (const geometry::Face& face : faces) {
    const double resistance = physics.surface_resistance(face.space, face.region, face.facing);
    // Links stand in the order of the faces; faces without any resistance have none on a diagonal.
    const bool diagonal = face.from % mesh.nx() != face.to % mesh.nx() &&
                          face.from / mesh.nx() != face.to / mesh.nx();
    if (resistance == 0.0 && diagonal) continue;
    const AirLink& through = *link++;
    if (resistance == 0.0) continue;
    const std::size_t i = through.unknown % mesh.columns(), j = through.unknown / mesh.columns();
    const double outside = physics.air[through.space] == air ? 1.0 : 0.0;
    const double flux = through.conductance * (cells[through.unknown] - outside) / face.length;
    const Mismatch off = mismatch(flux, flux, (nodes[face.from] - outside) / resistance,
                                  (nodes[face.to] - outside) / resistance);
    const double weight = face.length * resistance;
    const bool upright = through.side == CellSide::west || through.side == CellSide::east;
    double& across = upright ? gap.columns[i] : gap.rows[j];
    double& along = upright ? gap.rows[j] : gap.columns[i];
    across += weight * off.along;
    along += weight * off.across;
  }
  return gap;
}

}  // namespace quoin::solver
