// SPDX-License-Identifier: Apache-2.0
#include "solver/linear.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <stdexcept>
#include <utility>
#include <vector>

#include "solver/direct.hpp"
#include "solver/errors.hpp"
#include "solver/multigrid_solver.hpp"

namespace quoin::solver {

namespace {

void check_values(const std::vector<double>& values) {
  std::size_t wrong = 0;  // counted rather than looked for: that vectorises
  for (const double value : values) {
    wrong += value >= 0.0 && value <= std::numeric_limits<double>::max() ? 0 : 1;
  }
  if (wrong != 0) throw std::invalid_argument("a conductance is negative or not finite");
}

void check_shape(const FivePointOperator& network) {
  const std::size_t n = network.size();
  if (n == 0 || network.east.size() != n || network.north.size() != n ||
      network.ground.size() != n) {
    throw std::invalid_argument("a network needs nx * ny values of east, north and ground");
  }
  bool leaks = false;
  for (std::size_t node = network.nx - 1; node < n; node += network.nx) {
    leaks = leaks || network.east[node] != 0.0;
  }
  for (std::size_t node = n - network.nx; node < n; ++node) {
    leaks = leaks || network.north[node] != 0.0;
  }
  if (leaks) throw std::invalid_argument("a conductance leads out of the grid");
}

/// The connected parts of a network, found row by row: a run is a stretch of a row.
class Parts {
 public:
  explicit Parts(const FivePointOperator& network) {
    const std::size_t nx = network.nx;
    std::vector<std::uint32_t> below(nx);
    std::vector<std::uint32_t> here(nx);
    for (std::size_t start = 0; start < network.size(); start += nx) {
      std::pair<std::uint32_t, std::uint32_t> joined{0, 0};
      for (std::size_t i = 0; i < nx; ++i) {
        const std::size_t node = start + i;
        const bool from_west = i > 0 && network.east[node - 1] > 0.0;
        const bool from_below = start > 0 && network.north[node - nx] > 0.0;
        if (from_west) {
          here[i] = here[i - 1];
        } else if (from_below || network.east[node] > 0.0 || network.north[node] > 0.0 ||
                   network.ground[node] > 0.0) {
          here[i] = static_cast<std::uint32_t>(runs_.size());
          runs_.push_back({node, here[i], false});
        } else {
          continue;  // a void
        }
        if (network.ground[node] > 0.0) runs_[here[i]].grounded = true;
        if (from_below && joined != std::pair{below[i], here[i]}) {
          joined = {below[i], here[i]};
          join(below[i], here[i]);
        }
      }
      std::swap(below, here);
    }
  }

  /// A node of a part without any way to ground; the number of nodes where there is none.
  [[nodiscard]] std::size_t ungrounded_node(std::size_t none) {
    for (std::uint32_t run = 0; run < runs_.size(); ++run) {
      if (runs_[run].grounded) runs_[root(run)].grounded = true;
    }
    for (std::uint32_t run = 0; run < runs_.size(); ++run) {
      if (!runs_[root(run)].grounded) return runs_[run].first_node;
    }
    return none;
  }

 private:
  struct Run {
    std::size_t first_node;
    std::uint32_t parent;
    bool grounded;
  };

  std::uint32_t root(std::uint32_t run) {
    while (runs_[run].parent != run) run = runs_[run].parent = runs_[runs_[run].parent].parent;
    return run;
  }
  void join(std::uint32_t a, std::uint32_t b) {
    a = root(a);
    b = root(b);
    runs_[std::max(a, b)].parent = std::min(a, b);
  }

  std::vector<Run> runs_;
};

void check_grounded(const FivePointOperator& network) {
  const std::size_t node = Parts(network).ungrounded_node(network.size());
  if (node == network.size()) return;
  throw SolveError(fmt::format("the part of the network at node ({}, {}) has no way to ground",
                               node % network.nx, node / network.nx));
}

}  // namespace

std::unique_ptr<LinearSolver> linear_solver(const FivePointOperator& network,
                                            const LinearOptions& options) {
  check_shape(network);
  check_values(network.east);
  check_values(network.north);
  check_values(network.ground);
  check_grounded(network);
  switch (options.method) {
    case LinearMethod::multigrid:
      return multigrid_solver(network, options);
    case LinearMethod::direct:
      return direct_solver(network, options);
  }
  throw std::invalid_argument("no such linear method");
}

}  // namespace quoin::solver
