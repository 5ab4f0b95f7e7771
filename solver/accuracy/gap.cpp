// SPDX-License-Identifier: Apache-2.0
#include "solver/accuracy/gap.hpp"

#include <array>
#include <cmath>

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

SideFlows side_flows(const Assembly& assembly, const Twin& twin) {
  const std::span<const double> cells = twin.cells;
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
    const double into_air = link.conductance * (cells[link.unknown] - twin.spaces[link.space]);
    if (!link.side) continue;
    const bool forwards = link.side == CellSide::east || link.side == CellSide::north;
    side(flows[link.unknown], *link.side) = forwards ? into_air : -into_air;
  }
  return flows;
}

/// Two fluxes over a cell, one given on two opposite sides, the other on the two edges between
/// them: their difference in the mean, and what each sees change.
struct Mismatch {
  double mean = 0.0;
  double of_sides = 0.0;  ///< mended by finer strips across the flux
  double of_edges = 0.0;  ///< mended by finer strips along it

  Mismatch(double before, double after, double one_edge, double other_edge)
      : mean((before + after) / 2 - (one_edge + other_edge) / 2),
        of_sides((after - before) / 2),
        of_edges((other_edge - one_edge) / 2) {}
};

}  // namespace

Gap gap_between(const geometry::Mesh& mesh, const Physics& physics, const Assembly& cell_assembly,
                const Twin& first, const Twin& second) {
  Gap gap{0.0, no_blame(mesh)};
  const std::array<const Twin*, 2> twins{&first, &second};
  const std::array<SideFlows, 2> flows{side_flows(cell_assembly, first),
                                       side_flows(cell_assembly, second)};
  const auto note = [&gap](double amount, double& blame) {
    gap.sum += amount;
    blame += std::abs(amount);
  };
  const auto note_both = [&](double weight, const Mismatch& u, const Mismatch& w, double& across,
                             double& along) {
    const double mean = weight * u.mean * w.mean / 2;
    note(mean + weight * u.of_sides * w.of_sides, across);
    note(mean + weight * u.of_edges * w.of_edges, along);
  };
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const geometry::Cell& cell = mesh.cell(i, j);
      if (!is_solid(cell)) continue;
      const double dx = mesh.x[i + 1] - mesh.x[i], dy = mesh.y[j + 1] - mesh.y[j];
      const std::size_t sw = mesh.corner(i, j, false, false), se = mesh.corner(i, j, true, false);
      const std::size_t nw = mesh.corner(i, j, false, true), ne = mesh.corner(i, j, true, true);
      if (cell.split == geometry::Split::none) {
        const double conductivity = physics.conductivity[std::get<RegionId>(cell.below)];
        const auto mismatch_x = [&](std::size_t t) {
          const std::span<const double> nodes = twins[t]->nodes;
          const auto& [west, east, south, north] = flows[t][j * mesh.columns() + i];
          return Mismatch(west / dy, east / dy, conductivity * (nodes[sw] - nodes[se]) / dx,
                          conductivity * (nodes[nw] - nodes[ne]) / dx);
        };
        const auto mismatch_y = [&](std::size_t t) {
          const std::span<const double> nodes = twins[t]->nodes;
          const auto& [west, east, south, north] = flows[t][j * mesh.columns() + i];
          return Mismatch(south / dx, north / dx, conductivity * (nodes[sw] - nodes[nw]) / dy,
                          conductivity * (nodes[se] - nodes[ne]) / dy);
        };
        const double weight = dx * dy / conductivity;
        note_both(weight, mismatch_x(0), mismatch_x(1), gap.blame.columns[i], gap.blame.rows[j]);
        note_both(weight, mismatch_y(0), mismatch_y(1), gap.blame.rows[j], gap.blame.columns[i]);
        continue;
      }
      // In a triangle both fluxes are uniform: finer columns and finer rows mend it together.
      const bool rising = cell.split == geometry::Split::rising;
      const auto triangle = [&](const geometry::Fill& fill, bool below) {
        const auto* region = std::get_if<RegionId>(&fill);
        if (region == nullptr) return;
        const double conductivity = physics.conductivity[*region];
        std::array<double, 2> off_x{}, off_y{};
        for (std::size_t t = 0; t < 2; ++t) {
          const std::span<const double> nodes = twins[t]->nodes;
          const auto& [west, east, south, north] = flows[t][j * mesh.columns() + i];
          const bool at_east = rising == below;  // its upright leg
          const double slope_x = below ? nodes[sw] - nodes[se] : nodes[nw] - nodes[ne];
          const double slope_y = at_east ? nodes[se] - nodes[ne] : nodes[sw] - nodes[nw];
          off_x[t] = (at_east ? east : west) / dy - conductivity * slope_x / dx;
          off_y[t] = (below ? south : north) / dx - conductivity * slope_y / dy;
        }
        const double amount =
            dx * dy / 2 / conductivity * (off_x[0] * off_x[1] + off_y[0] * off_y[1]);
        note(amount / 2, gap.blame.columns[i]);
        note(amount / 2, gap.blame.rows[j]);
      };
      triangle(cell.below, true);
      triangle(cell.above, false);
    }
  }
  // The same on the surfaces, whose resistance is a layer without thickness.
  const std::vector<geometry::Face> faces = geometry::faces(mesh);
  auto link = cell_assembly.links.begin();
  for (const geometry::Face& face : faces) {
    const double resistance = physics.surface_resistance(face.space, face.region, face.facing);
    // Links stand in the order of the faces; faces without any resistance have none on a diagonal.
    const std::size_t from = mesh.on_grid(face.from), to = mesh.on_grid(face.to);
    const bool diagonal = from % mesh.nx() != to % mesh.nx() && from / mesh.nx() != to / mesh.nx();
    if (resistance == 0.0 && diagonal) continue;
    const AirLink& through = *link++;
    if (resistance == 0.0) continue;
    const std::size_t i = through.unknown % mesh.columns(), j = through.unknown / mesh.columns();
    const auto mismatch = [&](const Twin& twin) {
      const double outside = twin.spaces[through.space];
      const double flux =
          through.conductance * (twin.cells[through.unknown] - outside) / face.length;
      return Mismatch(flux, flux, (twin.nodes[face.from] - outside) / resistance,
                      (twin.nodes[face.to] - outside) / resistance);
    };
    const bool upright =
        through.side == geometry::CellSide::west || through.side == geometry::CellSide::east;
    note_both(face.length * resistance, mismatch(first), mismatch(second),
              upright ? gap.blame.columns[i] : gap.blame.rows[j],
              upright ? gap.blame.rows[j] : gap.blame.columns[i]);
  }
  return gap;
}

}  // namespace quoin::solver
