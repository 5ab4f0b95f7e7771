// SPDX-License-Identifier: Apache-2.0
#include "solver/scheme/network.hpp"

#include <algorithm>
#include <set>
#include <utility>

#include "solver/linear/direct.hpp"
#include "solver/linear/errors.hpp"
#include "solver/scheme/neighbours.hpp"

namespace quoin::solver {
namespace {

/// Temperature of a fixed node while one air is at 1 and the others at 0.
double value_at(const FixedNode& fixed, SpaceId one, const Per<SpaceId, SpaceId>& air) {
  const auto warm = std::count_if(fixed.spaces.begin(), fixed.spaces.end(),
                                  [&](SpaceId space) { return air[space] == one; });
  return static_cast<double>(warm) / static_cast<double>(fixed.spaces.size());
}

std::vector<SpaceId> airs_of(const Assembly& assembly, const Per<SpaceId, SpaceId>& air) {
  std::set<SpaceId> airs;
  for (const AirLink& link : assembly.links) airs.insert(air[link.space]);
  for (const FixedNode& fixed : assembly.fixed) {
    for (const SpaceId space : fixed.spaces) airs.insert(air[space]);
  }
  return {airs.begin(), airs.end()};
}

/// What every space sends into the section while air `one` is at 1 and the others at 0.
void add_space_flows(const Assembly& assembly, const Per<SpaceId, SpaceId>& air, SpaceId one,
                     const std::vector<double>& g, std::span<double> flow) {
  const auto air_value = [&](SpaceId space) { return air[space] == one ? 1.0 : 0.0; };
  std::vector<double> into_fixed(assembly.fixed.empty() ? 0 : g.size());
  for (const AirLink& link : assembly.links) {
    const double through = link.conductance * (air_value(link.space) - g[link.unknown]);
    flow[link.space.index] += through;
    if (!into_fixed.empty()) into_fixed[link.unknown] += through;
  }
  for (const FixedNode& fixed : assembly.fixed) {
    double leaves = -into_fixed[fixed.node];
    for_each_neighbour(assembly, fixed.node, [&](std::size_t m, double conductance) {
      leaves += conductance * (g[fixed.node] - g[m]);
    });
    for (const SpaceId space : fixed.spaces) {
      flow[space.index] += leaves / static_cast<double>(fixed.spaces.size());
    }
  }
}

}  // namespace

std::unique_ptr<LinearSolver> solver_of(const Assembly& assembly, const LinearOptions& options) {
  if (assembly.further_ground.empty()) {
    if (assembly.fixed.empty()) return linear_solver(assembly.network, options);
    std::vector<std::size_t> nodes;
    for (const FixedNode& node : assembly.fixed) nodes.push_back(node.node);
    return linear_solver(without_nodes(assembly.network, nodes), options);
  }
  LooseNetwork network = loose(assembly.network);
  network.ground.insert(network.ground.end(), assembly.further_ground.begin(),
                        assembly.further_ground.end());
  network.links.insert(network.links.end(), assembly.further_links.begin(),
                       assembly.further_links.end());
  std::vector<char> is_fixed(assembly.unknowns());
  for (const FixedNode& fixed : assembly.fixed) is_fixed[fixed.node] = 1;
  std::erase_if(network.links, [&](const Link& link) {
    if (is_fixed[link.one] == 0 && is_fixed[link.other] == 0) return false;
    network.ground[link.one] += link.conductance;
    network.ground[link.other] += link.conductance;
    return true;
  });
  for (const FixedNode& fixed : assembly.fixed) network.ground[fixed.node] = 0.0;
  return direct_solver(std::move(network), options);
}

Network::Network(Assembly assembly, const LinearOptions& options)
    : assembly_(std::move(assembly)), solver_(solver_of(assembly_, options)) {}

Basis Network::basis(const Per<SpaceId, SpaceId>& air) const {
  const Assembly& assembly = assembly_;
  Basis basis;
  basis.airs = airs_of(assembly, air);
  const std::size_t unknowns = assembly.unknowns();
  if (basis.airs.empty()) throw SolveError("no surface of the section meets a space");

  std::vector<double> rhs(basis.airs.size() * unknowns, 0.0);
  for (std::size_t a = 0; a < basis.airs.size(); ++a) {
    const std::span<double> part(rhs.data() + a * unknowns, unknowns);
    for (const AirLink& link : assembly.links) {
      if (air[link.space] == basis.airs[a]) part[link.unknown] += link.conductance;
    }
    for (const FixedNode& fixed : assembly.fixed) {
      const double value = value_at(fixed, basis.airs[a], air);
      for_each_neighbour(assembly, fixed.node, [&](std::size_t m, double conductance) {
        part[m] += conductance * value;
      });
    }
    for (const FixedNode& fixed : assembly.fixed) part[fixed.node] = 0.0;
  }

  std::vector<double> answer(rhs.size(), 0.0);
  for (const LinearReport& report : solver_->solve(rhs, answer)) {
    basis.residual = std::max(basis.residual, report.residual);
    basis.iterations = std::max(basis.iterations, report.iterations);
    basis.fell_back = basis.fell_back || report.fell_back;
  }

  basis.space_flow.assign(basis.airs.size() * air.size(), 0.0);
  for (std::size_t a = 0; a < basis.airs.size(); ++a) {
    const auto begin = answer.begin() + static_cast<std::ptrdiff_t>(a * unknowns);
    basis.g.emplace_back(begin, begin + static_cast<std::ptrdiff_t>(unknowns));
    for (const FixedNode& fixed : assembly.fixed) {
      basis.g[a][fixed.node] = value_at(fixed, basis.airs[a], air);
    }
    add_space_flows(assembly, air, basis.airs[a], basis.g[a],
                    std::span(basis.space_flow).subspan(a * air.size(), air.size()));
  }
  return basis;
}

std::vector<double> Network::response(std::vector<double> sources) const {
  for (const FixedNode& fixed : assembly_.fixed) sources[fixed.node] = 0.0;
  std::vector<double> answer(sources.size(), 0.0);
  static_cast<void>(solver_->solve(sources, answer));
  return answer;
}

}  // namespace quoin::solver
