// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/direct.hpp"

#include <Eigen/SparseCholesky>
#include <Eigen/SparseCore>
#include <utility>
#include <vector>

#include "solver/linear/errors.hpp"
#include "solver/linear/residual.hpp"

namespace quoin::solver {

namespace {

constexpr int refinements = 4;
constexpr double grace = 16.0;  // times the rounding of the answer alone, after all refinements

std::vector<double> diagonal_of(const LooseNetwork& network) {
  std::vector<double> diagonal = network.ground;
  for (const Link& link : network.links) {
    diagonal[link.one] += link.conductance;
    diagonal[link.other] += link.conductance;
  }
  return diagonal;
}

/// rhs - A T. Differences of temperatures first: neighbours are close, so these are exact.
void write_residual(const LooseNetwork& network, std::span<const double> rhs,
                    std::span<const double> temperatures, std::span<double> residual) {
  for (std::size_t n = 0; n < rhs.size(); ++n) {
    residual[n] = rhs[n] - network.ground[n] * temperatures[n];
  }
  for (const Link& link : network.links) {
    const double flow = link.conductance * (temperatures[link.one] - temperatures[link.other]);
    residual[link.one] -= flow;
    residual[link.other] += flow;
  }
}

class DirectSolver : public LinearSolver {
 public:
  DirectSolver(LooseNetwork network, const LinearOptions& options)
      : network_(std::move(network)),
        tolerance_(options.tolerance),
        diagonal_(diagonal_of(network_)) {
    number_active_nodes();
    factorise();
  }

  std::vector<LinearReport> solve(std::span<const double> rhs,
                                  std::span<double> temperatures) override {
    const std::size_t n = network_.ground.size();
    check_right_hand_sides(n, rhs, temperatures);
    std::vector<LinearReport> reports;
    for (std::size_t start = 0; start < rhs.size(); start += n) {
      reports.push_back(solve_one(rhs.subspan(start, n), temperatures.subspan(start, n)));
    }
    return reports;
  }

 private:
  void number_active_nodes() {
    for (std::size_t node = 0; node < diagonal_.size(); ++node) {
      if (diagonal_[node] > 0.0) active_.push_back(node);
    }
  }

  void factorise() {
    std::vector<int> number(diagonal_.size(), 0);
    for (std::size_t k = 0; k < active_.size(); ++k) number[active_[k]] = static_cast<int>(k);
    std::vector<Eigen::Triplet<double>> entries;
    entries.reserve(active_.size() + network_.links.size());
    for (const std::size_t node : active_) {
      entries.emplace_back(number[node], number[node], diagonal_[node]);
    }
    for (const Link& link : network_.links) {  // the lower triangle is enough
      const auto [low, high] = std::minmax(number[link.one], number[link.other]);
      entries.emplace_back(high, low, -link.conductance);
    }
    const auto size = static_cast<Eigen::Index>(active_.size());
    Eigen::SparseMatrix<double> matrix(size, size);
    matrix.setFromTriplets(entries.begin(), entries.end());
    factors_.compute(matrix);
    if (factors_.info() != Eigen::Success) {
      throw SolveError("the direct factorisation of the network failed");
    }
  }

  LinearReport solve_one(std::span<const double> rhs, std::span<double> temperatures) {
    std::vector<double> residual(rhs.size());
    Eigen::VectorXd packed(static_cast<Eigen::Index>(active_.size()));
    std::fill(temperatures.begin(), temperatures.end(), 0.0);
    LinearReport report;
    Residual reached;
    for (int pass = 0; pass < refinements; ++pass) {
      write_residual(network_, rhs, temperatures, residual);
      Eigen::Index k = 0;
      for (const std::size_t node : active_) packed[k++] = residual[node];
      const Eigen::VectorXd correction = factors_.solve(packed);
      k = 0;
      for (const std::size_t node : active_) temperatures[node] += correction[k++];
      write_residual(network_, rhs, temperatures, residual);
      reached = judged(residual, diagonal_, rhs, temperatures);
      report.residual = reached.relative;
      if (reached.meets(tolerance_)) return report;
    }
    // Elimination rounds as well, not only its result.
    if (reached.relative <= grace * reached.rounding) return report;
    throw unmet_tolerance(report.residual, tolerance_);
  }

  LooseNetwork network_;
  double tolerance_;
  std::vector<double> diagonal_;
  std::vector<std::size_t> active_;
  Eigen::SimplicialLDLT<Eigen::SparseMatrix<double>> factors_;
};

}  // namespace

LooseNetwork loose(const FivePointOperator& network) {
  LooseNetwork result{network.ground, {}};
  for (std::size_t node = 0; node < network.size(); ++node) {
    if (network.east[node] > 0.0) result.links.push_back({node, node + 1, network.east[node]});
    if (network.north[node] > 0.0)
      result.links.push_back({node, node + network.nx, network.north[node]});
  }
  return result;
}

std::unique_ptr<LinearSolver> direct_solver(const FivePointOperator& network,
                                            const LinearOptions& options) {
  return direct_solver(loose(network), options);
}

std::unique_ptr<LinearSolver> direct_solver(LooseNetwork network, const LinearOptions& options) {
  return std::make_unique<DirectSolver>(std::move(network), options);
}

}  // namespace quoin::solver
