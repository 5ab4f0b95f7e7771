// SPDX-License-Identifier: Apache-2.0
#include "solver/survey/parametrised.hpp"

#include "solver/scheme/assembly.hpp"
#include "solver/scheme/network.hpp"

namespace quoin::solver {
namespace {

/// The conductances of one region alone, at 1 W/(m K).
UnitOperator unit_region(const Parametrised& section, std::size_t region) {
  Physics alone;
  alone.conductivity = Per<RegionId, double>(section.regions, 0.0);
  alone.conductivity[RegionId(region)] = 1.0;
  std::size_t spaces = 0;
  for (const geometry::Face& face : section.faces)
    spaces = std::max<std::size_t>(spaces, face.space.index + 1);
  alone.resistance = Per<SpaceId, Per<RegionId, std::array<double, 3>>>(
      spaces, Per<RegionId, std::array<double, 3>>(section.regions, {1.0, 1.0, 1.0}));
  const Assembly assembly = node_centred(section.mesh, alone);
  const FivePointOperator& network = assembly.network;
  UnitOperator unit;
  for (std::size_t n = 0; n < network.size(); ++n) {
    if (network.east[n] > 0.0) unit.links.push_back({n, n + 1, network.east[n]});
    if (network.north[n] > 0.0) unit.links.push_back({n, n + network.nx, network.north[n]});
  }
  for (const Link& link : assembly.further_links)
    unit.links.push_back({link.one, link.other, link.conductance});
  return unit;
}

Assembly assembly_of(const Parametrised& section, const std::vector<UnitOperator>& units,
                     const Setting& setting) {
  const std::size_t grid = section.mesh.nx() * section.mesh.ny();
  const std::vector<double> zeros(grid, 0.0);
  Assembly assembly{{section.mesh.nx(), section.mesh.ny(), zeros, zeros, zeros}, {}, {}, {}};
  assembly.further_ground.assign(section.mesh.nodes() - grid, 0.0);
  FivePointOperator& network = assembly.network;
  for (std::size_t p = 0; p < units.size(); ++p) {
    const double value =
        p < section.regions ? setting.conductivity[p] : setting.conductance[p - section.regions];
    for (const UnitOperator::Link& link : units[p].links) {
      const double conductance = value * link.conductance;
      if (link.to == link.from) {
        (link.from < grid ? network.ground[link.from]
                          : assembly.further_ground[link.from - grid]) += conductance;
      } else if (link.from >= grid || link.to >= grid) {
        assembly.further_links.push_back({link.from, link.to, conductance});
      } else {
        (link.to == link.from + 1 ? network.east : network.north)[link.from] += conductance;
      }
    }
  }
  return assembly;
}

}  // namespace

std::vector<UnitOperator> unit_operators(const Parametrised& section) {
  std::vector<UnitOperator> units;
  for (std::size_t region = 0; region < section.regions; ++region)
    units.push_back(unit_region(section, region));
  units.resize(section.regions + section.group_air.size());
  for (std::size_t f = 0; f < section.faces.size(); ++f) {
    const geometry::Face& face = section.faces[f];
    auto& links = units[section.regions + section.group[f]].links;
    for (const std::size_t node : {face.from, face.to})
      links.push_back({node, node, face.length / 2});
  }
  return units;
}

std::vector<std::vector<double>> full_fields(const Parametrised& section, const Setting& setting,
                                             const LinearOptions& options) {
  const std::vector<UnitOperator> units = unit_operators(section);
  return full_fields(section, units, setting, options);
}

std::vector<std::vector<double>> full_fields(const Parametrised& section,
                                             const std::vector<UnitOperator>& units,
                                             const Setting& setting, const LinearOptions& options) {
  const std::size_t nodes = section.mesh.nodes(), fields = section.airs - 1;
  std::vector<double> heat(fields * nodes, 0.0), answer(heat.size(), 0.0);
  for (std::size_t g = 0; g < section.group_air.size(); ++g) {
    if (section.group_air[g] == fields) continue;
    for (const UnitOperator::Link& link : units[section.regions + g].links)
      heat[section.group_air[g] * nodes + link.from] += setting.conductance[g] * link.conductance;
  }
  if (fields > 0) {
    const Assembly assembly = assembly_of(section, units, setting);
    static_cast<void>(solver_of(assembly, options)->solve(heat, answer));
  }
  std::vector<std::vector<double>> result;
  for (std::size_t a = 0; a < fields; ++a) {
    const auto begin = answer.begin() + std::ptrdiff_t(a * nodes);
    result.emplace_back(begin, begin + std::ptrdiff_t(nodes));
  }
  return result;
}

std::vector<double> full_shares(const Parametrised& section, const Setting& setting,
                                const std::vector<Watched>& watched, const LinearOptions& options) {
  return full_shares(section, unit_operators(section), setting, watched, options);
}

std::vector<double> full_shares(const Parametrised& section, const std::vector<UnitOperator>& units,
                                const Setting& setting, const std::vector<Watched>& watched,
                                const LinearOptions& options) {
  const auto fields = full_fields(section, units, setting, options);
  std::vector<double> shares;
  for (const Watched& one : watched) {
    double rest = 0.0;
    for (const auto& [node, weight] : one) rest += weight;
    for (const auto& field : fields) {
      double share = 0.0;
      for (const auto& [node, weight] : one) share += weight * field[node];
      shares.push_back(share);
      rest -= share;
    }
    shares.push_back(rest);
  }
  return shares;
}

}  // namespace quoin::solver
