// SPDX-License-Identifier: Apache-2.0
#include "solver/linear.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cstddef>
#include <cstdint>
#include <limits>
#include <stdexcept>
#include <vector>

#include "solver/direct.hpp"
#include "solver/errors.hpp"

namespace quoin::solver {

namespace {

constexpr double largest = std::numeric_limits<double>::max();

void check_shape(const FivePointOperator &network) {
  const std::size_t n = network.size();
  if (n == 0 || network.east.size() != n || network.north.size() != n ||
      network.ground.size() != n) {
    throw std::invalid_argument("a network needs nx * ny values of east, north and ground");
  }
  const auto is_fine = [](double value) { return value >= 0.0 && value <= largest; };
  for (const auto *values : {&network.east, &network.north, &network.ground}) {
    if (!std::all_of(values->begin(), values->end(), is_fine)) {
      throw std::invalid_argument("a conductance is negative or not finite");
    }
  }
  for (std::size_t j = 0; j < network.ny; ++j) {
    if (network.east[(j + 1) * network.nx - 1] != 0.0) {
      throw std::invalid_argument("a conductance leads out of the grid to the east");
    }
  }
  const auto top = network.north.end() - static_cast<std::ptrdiff_t>(network.nx);
  if (!std::all_of(top, network.north.end(), [](double value) { return value == 0.0; })) {
    throw std::invalid_argument("a conductance leads out of the grid to the north");
  }
}

/// Voids aside, heat put in anywhere must have a way out.
void check_grounded(const FivePointOperator &network) {
  const std::size_t nx = network.nx;
  const std::size_t n = network.size();
  std::vector<std::uint8_t> seen(n, 0);
  std::vector<std::size_t> waiting;
  for (std::size_t start = 0; start < n; ++start) {
    if (seen[start] != 0) continue;
    // Walk the connected part that holds `start`.
    std::size_t count = 0;
    bool grounded = false;
    const auto reach = [&](std::size_t node, double conductance) {
      if (conductance > 0.0 && seen[node] == 0) {
        seen[node] = 1;
        waiting.push_back(node);
      }
    };
    reach(start, 1.0);
    while (!waiting.empty()) {
      const std::size_t node = waiting.back();
      waiting.pop_back();
      ++count;
      grounded = grounded || network.ground[node] > 0.0;
      const std::size_t i = node % nx;
      if (i + 1 < nx) reach(node + 1, network.east[node]);
      if (i > 0) reach(node - 1, network.east[node - 1]);
      if (node + nx < n) reach(node + nx, network.north[node]);
      if (node >= nx) reach(node - nx, network.north[node - nx]);
    }
    if (count > 1 && !grounded) {
      throw SolveError(
          fmt::format("the part of the network around node ({}, "
                      "{}), {} nodes, has no way to ground",
                      start % nx, start / nx, count));
    }
  }
}

}  // namespace

std::unique_ptr<LinearSolver> linear_solver(const FivePointOperator &network,
                                            const LinearOptions &options) {
  check_shape(network);
  check_grounded(network);
  return direct_solver(network, options);
}

}  // namespace quoin::solver
