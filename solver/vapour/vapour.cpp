// SPDX-License-Identifier: Apache-2.0
#include "solver/vapour/vapour.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

#include "materials/moist_air.hpp"
#include "solver/scheme/assembly.hpp"
#include "solver/scheme/neighbours.hpp"
#include "solver/vapour/ceiling.hpp"

namespace quoin::solver {
namespace {

constexpr double infinite = std::numeric_limits<double>::infinity();

/// Diffusion as conduction: openness for conductivity, sd for resistance. Nothing passes the
/// surface of what lets nothing through.
Physics as_conduction(const VapourPhysics& physics) {
  Physics result;
  result.conductivity = physics.openness;
  result.air = physics.air;
  result.is_fabric = Per<RegionId, char>(physics.openness.size(), 1);
  for (const auto& by_region : physics.coat) {
    Per<RegionId, std::array<double, 3>> resistance;
    for (const RegionId region : geometry::ids(physics.openness)) {
      const double sd = physics.openness[region] > 0.0 ? by_region[region] : infinite;
      resistance.add({sd, sd, sd});
    }
    result.resistance.add(std::move(resistance));
  }
  return result;
}

/// Nodes at the corners of cells that show a wet region.
std::vector<char> wet_nodes(const geometry::Mesh& mesh, const geometry::TwoSided& nodes,
                            const VapourPhysics& physics) {
  std::vector<char> wet(nodes.size(), 0);
  const auto is_wet = [&](const geometry::Fill& fill) {
    const auto* region = std::get_if<RegionId>(&fill);
    return region != nullptr && physics.wet[*region] != 0;
  };
  for (std::size_t j = 0; j < mesh.rows(); ++j) {
    for (std::size_t i = 0; i < mesh.columns(); ++i) {
      const geometry::Cell& cell = mesh.cell(i, j);
      const std::size_t sw = nodes.corner(i, j, false, false);
      const std::size_t nw = nodes.corner(i, j, false, true);
      const bool below = is_wet(cell.below), above = is_wet(cell.above);
      if (!below && !above) continue;
      const bool rising = cell.split == geometry::Split::rising;
      const bool falling = cell.split == geometry::Split::falling;
      if (below || rising) wet[sw] = 1;
      if (below || falling) wet[sw + 1] = 1;
      if (above || falling) wet[nw] = 1;
      if (above || rising) wet[nw + 1] = 1;
    }
  }
  return wet;
}

/// Joins the two nodes on either side of a membrane by what passes it, and those that no membrane
/// parts so well that their pressures differ by rounding only.
void join_twins(const geometry::TwoSided& nodes, const VapourPhysics& physics,
                FivePointOperator& network) {
  constexpr double as_one = 1e7;  // times what else the nodes conduct
  std::vector<double> sum = network.ground;
  for (std::size_t n = 0; n < network.size(); ++n) {
    for_each_neighbour(network, n, [&](std::size_t, double conductance) { sum[n] += conductance; });
  }
  for (const geometry::Twins& twins : nodes.twins()) {
    double& between =
        twins.other == twins.one + 1 ? network.east[twins.one] : network.north[twins.one];
    if (twins.joined) {
      between = as_one * std::max(sum[twins.one], sum[twins.other]);
      continue;
    }
    for (const auto& [membrane, length] : twins.parted)
      between += length / physics.membrane[membrane];
  }
}

/// Makes the problem of a section, and reads its answer.
class Diffusion {
 public:
  Diffusion(const geometry::Mesh& mesh, const std::vector<double>& temperature,
            const VapourPhysics& physics, const SpacePressures& pressures, const Stored* stored)
      : mesh_(mesh),
        temperature_(temperature),
        nodes_(mesh),
        physics_(physics),
        pressures_(pressures),
        stored_(stored),
        assembly_(node_centred(mesh, nodes_, as_conduction(physics))) {
    join_twins(nodes_, physics, assembly_.network);
    for (std::size_t n = 0; n < nodes_.size(); ++n)
      saturation_.push_back(materials::saturation_pressure(temperature[nodes_.of_mesh(n)]));
  }

  [[nodiscard]] CeilingProblem problem() const {
    const std::size_t size = assembly_.network.size();
    CeilingProblem problem{assembly_.network, std::vector<double>(size, 0.0), saturation_,
                           std::vector<char>(size, 0), std::vector<double>(size, 0.0)};
    for (std::size_t n = 0; n < size; ++n) problem.leader.push_back(nodes_.leader(n));
    for (const AirLink& link : assembly_.links)
      problem.source[link.unknown] += link.conductance * before(link.space, link.unknown);
    if (stored_ != nullptr) {
      for (std::size_t n = 0; n < size; ++n)
        problem.source[n] += stored_->water[n] / stored_->seconds / air_permeability;
    }
    const std::vector<char> wet = wet_nodes(mesh_, nodes_, physics_);
    for (std::size_t n = 0; n < size; ++n) {
      if (wet[n] == 0) continue;
      problem.held[n] = 1;
      problem.held_at[n] = saturation_[n];
    }
    for (const FixedNode& fixed : assembly_.fixed) {
      problem.held[fixed.node] = 1;
      problem.held_at[fixed.node] = 0.0;
      for (const SpaceId space : fixed.spaces) {
        problem.held_at[fixed.node] +=
            before(space, fixed.node) / static_cast<double>(fixed.spaces.size());
      }
    }
    return problem;
  }

  [[nodiscard]] VapourField field(CeilingSolution solution) const {
    VapourField field;
    field.saturation = saturation_;
    field.iterations = solution.iterations;
    field.condensing = std::move(solution.taken_up);
    for (double& rate : field.condensing) rate *= air_permeability;
    add_flows(solution.potential, field);
    field.dripping = dripping();
    add_checks(solution, field);
    field.pressure = std::move(solution.potential);
    return field;
  }

 private:
  /// The pressure before the coat: that of the air, or less where the surface is below its dew
  /// point.
  [[nodiscard]] double before(SpaceId space, std::size_t node) const {
    return std::min(pressures_[physics_.air[space]], saturation_[node]);
  }

  void add_flows(const std::vector<double>& pressure, VapourField& field) const {
    field.flows = SpacePressures(physics_.air.size(), 0.0);
    std::vector<double> net(pressure.size(), 0.0);  // what leaves each node to its neighbours
    for (const AirLink& link : assembly_.links) {
      if (link.conductance == 0.0) continue;
      const double through =
          link.conductance * (before(link.space, link.unknown) - pressure[link.unknown]);
      field.flows[link.space] += air_permeability * through;
      net[link.unknown] -= through;
    }
    for (std::size_t n = 0; n < pressure.size(); ++n) {
      for_each_neighbour(assembly_.network, n, [&](std::size_t m, double conductance) {
        if (conductance > 0.0 && std::isfinite(pressure[n]))
          net[n] += conductance * (pressure[n] - pressure[m]);
      });
    }
    std::vector<char> at_surface(pressure.size(), 0);
    for (const FixedNode& fixed : assembly_.fixed) {
      at_surface[fixed.node] = 1;
      const double each = net[fixed.node] / static_cast<double>(fixed.spaces.size());
      for (const SpaceId space : fixed.spaces) field.flows[space] += air_permeability * each;
    }
    const std::vector<char> wet = wet_nodes(mesh_, nodes_, physics_);
    for (std::size_t n = 0; n < pressure.size(); ++n) {
      if (wet[n] != 0 && at_surface[n] == 0) field.from_wet += air_permeability * net[n];
    }
  }

  [[nodiscard]] Per<SpaceId, double> dripping() const {
    constexpr double rounding = 1e-9;
    Per<SpaceId, double> length(physics_.air.size(), 0.0);
    for (const geometry::Face& face : geometry::faces(mesh_)) {
      const double air = pressures_[physics_.air[face.space]];
      for (const std::size_t node : {face.from, face.to}) {
        const double saturation = materials::saturation_pressure(temperature_[node]);
        if (air > saturation * (1.0 + rounding)) length[face.space] += face.length / 2;
      }
    }
    return length;
  }

  void add_checks(const CeilingSolution& solution, VapourField& field) const {
    // What moves is measured against something, lest nothing but rounding be found unbalanced.
    const double least =
        1e-6 * air_permeability * *std::max_element(pressures_.begin(), pressures_.end());
    double in = field.from_wet, scale = least + std::abs(field.from_wet), above = 0.0;
    for (const double flow : field.flows) {
      in += flow;
      scale += std::abs(flow);
    }
    for (std::size_t n = 0; n < field.condensing.size(); ++n) {
      in -= field.condensing[n];
      if (stored_ != nullptr) in += stored_->water[n] / stored_->seconds;
      scale += field.condensing[n];
      const double pressure = solution.potential[n];
      if (std::isfinite(pressure)) above = std::max(above, pressure / saturation_[n] - 1.0);
    }
    const double balance = std::abs(in) / scale;
    field.checks = {{"vapour balance", balance, 1e-4, balance <= 1e-4},
                    {"no pressure above saturation", above, 1e-8, above <= 1e-8}};
  }

  const geometry::Mesh& mesh_;
  const std::vector<double>& temperature_;  ///< degC, by node of the mesh
  geometry::TwoSided nodes_;
  const VapourPhysics& physics_;
  const SpacePressures& pressures_;
  const Stored* stored_;
  Assembly assembly_;
  std::vector<double> saturation_;  ///< Pa, by node
};

}  // namespace

VapourField vapour_field(const geometry::Mesh& mesh, const std::vector<double>& temperature,
                         const VapourPhysics& physics, const SpacePressures& pressures,
                         const LinearOptions& options, const Stored* stored) {
  const Diffusion diffusion(mesh, temperature, physics, pressures, stored);
  VapourField field = diffusion.field(below_ceiling(diffusion.problem(), options));
  require(field.checks);
  return field;
}

}  // namespace quoin::solver
