// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/residual.hpp"

#include <fmt/format.h>

#include <cmath>
#include <limits>
#include <stdexcept>

namespace quoin::solver {

void write_residual(const FivePointOperator& network, std::span<const double> rhs,
                    std::span<const double> temperatures, std::span<double> residual) {
  const std::size_t nx = network.nx;
  const std::size_t n = network.size();
  for (std::size_t j = 0; j < network.ny; ++j) {
    for (std::size_t i = 0; i < nx; ++i) {
      const std::size_t node = j * nx + i;
      const double here = temperatures[node];
      // Differences of temperatures first: neighbours are close, so these are
      // exact.
      double flow = network.ground[node] * here;
      if (i + 1 < nx) flow += network.east[node] * (here - temperatures[node + 1]);
      if (i > 0) flow += network.east[node - 1] * (here - temperatures[node - 1]);
      if (node + nx < n) flow += network.north[node] * (here - temperatures[node + nx]);
      if (node >= nx) flow += network.north[node - nx] * (here - temperatures[node - nx]);
      residual[node] = rhs[node] - flow;
    }
  }
}

std::vector<double> diagonal_of(const FivePointOperator& network) {
  const std::size_t nx = network.nx;
  std::vector<double> diagonal = network.ground;
  for (std::size_t node = 0; node < diagonal.size(); ++node) {
    if (network.east[node] > 0.0) {
      diagonal[node] += network.east[node];
      diagonal[node + 1] += network.east[node];
    }
    if (network.north[node] > 0.0) {
      diagonal[node] += network.north[node];
      diagonal[node + nx] += network.north[node];
    }
  }
  return diagonal;
}

Residual residual_of(const FivePointOperator& network, std::span<const double> diagonal,
                     std::span<const double> rhs, std::span<const double> temperatures) {
  std::vector<double> residual(rhs.size());
  write_residual(network, rhs, temperatures, residual);
  return judged(residual, diagonal, rhs, temperatures);
}

Residual judged(std::span<const double> residual, std::span<const double> diagonal,
                std::span<const double> rhs, std::span<const double> temperatures) {
  double left = 0.0;
  double given = 0.0;
  double weight = 0.0;
  for (std::size_t node = 0; node < rhs.size(); ++node) {
    if (diagonal[node] == 0.0) continue;
    const double flow = diagonal[node] * temperatures[node];
    left += residual[node] * residual[node];
    given += rhs[node] * rhs[node];
    weight += flow * flow;
  }
  if (given == 0.0) return {left == 0.0 ? 0.0 : std::numeric_limits<double>::infinity(), 0.0};
  // Each T rounds by half an epsilon, and so do its four neighbours.
  const double epsilon = std::numeric_limits<double>::epsilon();
  return {std::sqrt(left / given), 2.0 * epsilon * std::sqrt(weight / given)};
}

void check_right_hand_sides(std::size_t size, std::span<const double> rhs,
                            std::span<const double> temperatures) {
  if (rhs.size() % size != 0 || rhs.size() != temperatures.size()) {
    throw std::invalid_argument("right-hand sides and temperatures need k * nx * ny values each");
  }
}

SolveError unmet_tolerance(double residual, double tolerance) {
  return SolveError(
      fmt::format("the linear solver reached a relative residual "
                  "of {:.2g}, wanted was {:.2g}",
                  residual, tolerance));
}

}  // namespace quoin::solver
