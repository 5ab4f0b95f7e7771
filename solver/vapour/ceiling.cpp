// SPDX-License-Identifier: Apache-2.0
#include "solver/vapour/ceiling.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>
#include <utility>

#include "solver/linear/errors.hpp"
#include "solver/scheme/neighbours.hpp"

namespace quoin::solver {
namespace {

constexpr int most_choices = 1000;
/// Nearer to the ceiling than this share of it, and nearer to no uptake than this share of what its
/// conductances carry, a node counts as undecided and stays what it is: rounding is below.
constexpr double undecided = 1e-11;

/// Nodes that a ground or a held node reaches.
std::vector<char> reached_nodes(const CeilingProblem& problem) {
  const FivePointOperator& network = problem.network;
  std::vector<char> reached(network.size(), 0);
  std::vector<std::size_t> front;
  for (std::size_t n = 0; n < network.size(); ++n) {
    if (problem.held[n] == 0 && network.ground[n] == 0.0) continue;
    reached[n] = 1;
    front.push_back(n);
  }
  while (!front.empty()) {
    const std::size_t n = front.back();
    front.pop_back();
    for_each_neighbour(network, n, [&](std::size_t m, double conductance) {
      if (conductance == 0.0 || reached[m] != 0) return;
      reached[m] = 1;
      front.push_back(m);
    });
  }
  return reached;
}

/// Cuts nodes that nothing reaches: their potential is anything.
void cut_off(FivePointOperator& network, const std::vector<char>& reached) {
  for (std::size_t n = 0; n < network.size(); ++n) {
    if (reached[n] == 0) network.east[n] = network.north[n] = 0.0;
  }
}

/// One solve with some nodes held.
void solve(const CeilingProblem& problem, const std::vector<std::size_t>& held,
           const LinearOptions& options, CeilingSolution& solution) {
  const FivePointOperator& network = problem.network;
  std::vector<double> rhs = problem.source;
  for (const std::size_t n : held) {
    for_each_neighbour(network, n, [&](std::size_t m, double conductance) {
      rhs[m] += conductance * solution.potential[n];
    });
  }
  std::vector<double> answer = solution.potential;
  for (const std::size_t n : held) rhs[n] = answer[n] = 0.0;
  const FivePointOperator rest = without_nodes(network, held);
  const bool any = std::any_of(rest.ground.begin(), rest.ground.end(),
                               [](double conductance) { return conductance > 0.0; });
  if (!any) return;
  for (const LinearReport& report : linear_solver(rest, options)->solve(rhs, answer))
    solution.residual = std::max(solution.residual, report.residual);
  for (const std::size_t n : held) answer[n] = solution.potential[n];
  solution.potential = std::move(answer);
}

/// What nodes at one place decide together: they are at the ceiling together or not at all.
class Groups {
 public:
  explicit Groups(const CeilingProblem& problem) : leader_(problem.leader) {
    const FivePointOperator& network = problem.network;
    if (leader_.empty()) {
      leader_.resize(network.size());
      std::iota(leader_.begin(), leader_.end(), std::size_t{0});
    }
    conductance.assign(network.size(), 0.0);
    held.assign(network.size(), 0);
    for (std::size_t n = 0; n < network.size(); ++n) {
      double& sum = conductance[leader_[n]];
      sum += network.ground[n];
      for_each_neighbour(network, n, [&](std::size_t m, double between) {
        if (leader_[m] != leader_[n]) sum += between;
      });
      if (problem.held[n] != 0) held[leader_[n]] = 1;
    }
  }

  [[nodiscard]] std::size_t leader(std::size_t node) const { return leader_[node]; }
  [[nodiscard]] bool leads(std::size_t node) const { return leader_[node] == node; }

  /// Gives each leader the sum, or the greatest, of its like.
  void add_up(std::vector<double>& values) const {
    for (std::size_t n = 0; n < values.size(); ++n) {
      if (!leads(n)) values[leader_[n]] += std::exchange(values[n], 0.0);
    }
  }
  [[nodiscard]] std::vector<double> greatest(std::vector<double> values) const {
    for (std::size_t n = 0; n < values.size(); ++n)
      values[leader_[n]] = std::max(values[leader_[n]], values[n]);
    return values;
  }

  std::vector<double> conductance;  ///< of all but the ways between them, by leader
  std::vector<char> held;           ///< whether the potential of any is given, by leader

 private:
  std::vector<std::size_t> leader_;
};

}  // namespace

CeilingSolution below_ceiling(CeilingProblem problem, const LinearOptions& options) {
  const FivePointOperator& network = problem.network;
  const std::size_t size = network.size();
  const std::vector<char> reached = reached_nodes(problem);
  cut_off(problem.network, reached);
  const Groups groups(problem);

  CeilingSolution solution;
  solution.potential.assign(size, 0.0);
  solution.taken_up.assign(size, 0.0);
  std::vector<char> there(size, 0);
  std::vector<double> surplus(size);
  for (bool settled = false; !settled; ++solution.iterations) {
    if (solution.iterations == most_choices)
      throw SolveError("the nodes where vapour condenses do not settle");
    std::vector<std::size_t> held;
    for (std::size_t n = 0; n < size; ++n) {
      if (problem.held[n] == 0 && there[groups.leader(n)] == 0) continue;
      held.push_back(n);
      solution.potential[n] = problem.held[n] != 0 ? problem.held_at[n] : problem.ceiling[n];
    }
    solve(problem, held, options, solution);
    write_residual(network, problem.source, solution.potential, surplus);
    groups.add_up(surplus);
    const std::vector<double> potential = groups.greatest(solution.potential);
    settled = true;
    for (std::size_t n = 0; n < size; ++n) {
      if (!groups.leads(n) || groups.held[n] != 0 || groups.conductance[n] == 0.0 ||
          !std::isfinite(problem.ceiling[n]))
        continue;
      const double slack = undecided * problem.ceiling[n];
      const bool stays = there[n] != 0 ? surplus[n] >= -slack * groups.conductance[n]
                                       : potential[n] > problem.ceiling[n] + slack;
      settled = settled && stays == (there[n] != 0);
      there[n] = stays ? 1 : 0;
    }
  }
  for (std::size_t n = 0; n < size; ++n) {
    if (there[n] != 0) solution.taken_up[n] = std::max(0.0, surplus[n]);
    if (reached[n] == 0) solution.potential[n] = std::numeric_limits<double>::quiet_NaN();
  }
  return solution;
}

}  // namespace quoin::solver
