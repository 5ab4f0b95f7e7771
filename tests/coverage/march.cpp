// SPDX-License-Identifier: Apache-2.0
#include "tests/coverage/march.hpp"

#include <algorithm>

#include "solver/linear/linear.hpp"

namespace quoin::testing {
namespace {

constexpr double step = 1800.0;  // s
constexpr std::size_t steps_an_hour = 2;

/// What each air brings to each node, W/(m K). Shape: airs by nodes.
std::vector<std::vector<double>> loads_of(const solver::Parametrised& section,
                                          const solver::Setting& setting, std::size_t nodes) {
  std::vector<std::vector<double>> loads(section.airs, std::vector<double>(nodes, 0.0));
  for (std::size_t f = 0; f < section.faces.size(); ++f) {
    const geometry::Face& face = section.faces[f];
    const std::size_t group = section.group[f];
    for (const std::size_t node : {face.from, face.to})
      loads[section.group_air[group]][node] += setting.conductance[group] * face.length / 2;
  }
  return loads;
}

/// The heat that each node stores, J/(m K): a quarter of each cell beside it.
std::vector<double> stored_by(const solver::Parametrised& section,
                              const std::vector<double>& heat_capacity) {
  const geometry::Mesh& mesh = section.mesh;
  std::vector<double> stored(mesh.nx() * mesh.ny(), 0.0);
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const auto* region = std::get_if<geometry::RegionId>(&mesh.cell(i, j).below);
      if (region == nullptr) continue;
      const double quarter = heat_capacity[region->index] * (mesh.x[i + 1] - mesh.x[i]) *
                             (mesh.y[j + 1] - mesh.y[j]) / 4;
      for (const std::size_t node :
           {mesh.node(i, j), mesh.node(i + 1, j), mesh.node(i, j + 1), mesh.node(i + 1, j + 1)})
        stored[node] += quarter;
    }
  }
  return stored;
}

solver::FivePointOperator network_of(const solver::Parametrised& section,
                                     const solver::Setting& setting, std::size_t nodes) {
  const std::vector<double> zeros(nodes, 0.0);
  solver::FivePointOperator network{section.mesh.nx(), section.mesh.ny(), zeros, zeros, zeros};
  const auto units = solver::unit_operators(section);
  for (std::size_t p = 0; p < units.size(); ++p) {
    const double value =
        p < section.regions ? setting.conductivity[p] : setting.conductance[p - section.regions];
    for (const auto& link : units[p].links) {
      auto& kind = link.to == link.from       ? network.ground
                   : link.to == link.from + 1 ? network.east
                                              : network.north;
      kind[link.from] += value * link.conductance;
    }
  }
  return network;
}

}  // namespace

std::vector<double> marched(const solver::Parametrised& section, const solver::Setting& setting,
                            const std::vector<double>& heat_capacity,
                            const std::vector<std::vector<double>>& hourly) {
  const std::size_t nodes = section.mesh.nx() * section.mesh.ny();
  const auto loads = loads_of(section, setting, nodes);
  const std::vector<double> stored = stored_by(section, heat_capacity);
  solver::FivePointOperator network = network_of(section, setting, nodes);
  const auto heat_at = [&](std::size_t hour, double share) {
    std::vector<double> heat(nodes, 0.0);
    for (std::size_t a = 0; a < section.airs; ++a) {
      const double from = hourly[a][hour];
      const double to = hourly[a][std::min(hour + 1, hourly[a].size() - 1)];
      for (std::size_t n = 0; n < nodes; ++n) heat[n] += (from + share * (to - from)) * loads[a][n];
    }
    return heat;
  };
  std::vector<double> field(nodes, 0.0);
  static_cast<void>(solver::linear_solver(network, {})->solve(heat_at(0, 0.0), field));
  for (std::size_t n = 0; n < nodes; ++n) network.ground[n] += stored[n] / step;
  solver::LinearOptions loose;
  loose.tolerance = 1e-9;  // of a thermometer's tenths
  const auto stepper = solver::linear_solver(network, loose);
  for (std::size_t hour = 0; hour + 1 < hourly.front().size(); ++hour) {
    for (std::size_t s = 1; s <= steps_an_hour; ++s) {
      std::vector<double> heat =
          heat_at(hour, static_cast<double>(s) / static_cast<double>(steps_an_hour));
      for (std::size_t n = 0; n < nodes; ++n) heat[n] += stored[n] / step * field[n];
      static_cast<void>(stepper->solve(heat, field));
    }
  }
  return field;
}

}  // namespace quoin::testing
