// SPDX-License-Identifier: Apache-2.0
#include "solver/multigrid_solver.hpp"

#include <algorithm>
#include <cmath>

#include "solver/conjugate_gradients.hpp"
#include "solver/residual.hpp"

namespace quoin::solver {

namespace {

/// More threads than one for each so many nodes would only wait for each other.
constexpr std::size_t nodes_per_thread = 20'000;
/// Times that conjugate gradients start from a fresh residual.
constexpr int pass_limit = 6;

/// Where the nodes of the user's grid stand in panels.
class Arrangement {
 public:
  Arrangement(std::size_t nx, std::size_t ny)
      : upright_(nx >= ny), layout_(panel_layout(std::max(nx, ny), std::min(nx, ny))) {
    column_stride_ = upright_ ? 1 : nx;
    row_stride_ = upright_ ? nx : 1;
  }

  [[nodiscard]] const PanelLayout& layout() const { return layout_; }
  /// Whether columns run in the direction of j.
  [[nodiscard]] bool upright() const { return upright_; }

  void read(std::span<const double> natural, Panels<double>& panels) const {
    visit([&](std::size_t node, std::size_t q, std::size_t k) {
      panels.panel(q)[k] = natural[node];
    });
  }
  void write(const Panels<double>& panels, std::span<double> natural) const {
    visit([&](std::size_t node, std::size_t q, std::size_t k) {
      natural[node] = panels.panel(q)[k];
    });
  }

 private:
  template <typename Act>
  void visit(const Act& act) const {
    for (std::size_t j = 0; j < layout_.rows; ++j) {
      for (std::size_t q = 0; q < layout_.panels; ++q) {
        std::size_t lane = 0;
        for (std::size_t column = q; column < layout_.columns; column += layout_.panels) {
          act(column * column_stride_ + j * row_stride_, q, j * lane_count + lane++);
        }
      }
    }
  }

  bool upright_;
  PanelLayout layout_;
  std::size_t column_stride_;
  std::size_t row_stride_;
};

Conductances<double> panelled(const FivePointOperator& network, const Arrangement& arrangement) {
  Conductances<double> result(arrangement.layout(), false);
  const bool upright = arrangement.upright();
  arrangement.read(upright ? network.east : network.north, result.east);
  arrangement.read(upright ? network.north : network.east, result.north);
  arrangement.read(network.ground, result.ground);
  result.east.write_west_ghost();
  return result;
}

/// A copy for a preconditioner to keep.
template <typename T>
Conductances<T> copied(const Conductances<double>& network) {
  Conductances<T> result(network.layout, false);
  const std::size_t size = network.layout.panel_size();
  for (std::size_t q = 0; q < network.layout.panels; ++q) {
    std::copy_n(network.east.panel(q), size, result.east.panel(q));
    std::copy_n(network.north.panel(q), size, result.north.panel(q));
    std::copy_n(network.ground.panel(q), size, result.ground.panel(q));
  }
  result.east.write_west_ghost();
  return result;
}

class MultigridSolver : public LinearSolver {
 public:
  MultigridSolver(const FivePointOperator& network, const LinearOptions& options)
      : options_(options),
        arrangement_(network.nx, network.ny),
        network_(panelled(network, arrangement_)),
        gradients_(network_) {
    const auto useful = static_cast<int>(network.size() / nodes_per_thread + 1);
    options_.threads = std::clamp(options_.threads, 1, useful);
    if (needs_double_precision(network_)) {
      go_double();
    } else {
      single_ = std::make_unique<Multigrid<float>>(copied<float>(network_), options_.threads);
    }
  }

  std::vector<LinearReport> solve(std::span<const double> rhs,
                                  std::span<double> temperatures) override {
    const std::size_t n = arrangement_.layout().columns * arrangement_.layout().rows;
    check_right_hand_sides(n, rhs, temperatures);
    std::vector<LinearReport> reports;
    for (std::size_t start = 0; start < rhs.size(); start += n) {
      reports.push_back(solve_one(rhs.subspan(start, n), temperatures.subspan(start, n)));
    }
    return reports;
  }

 private:
  void go_double() {
    single_.reset();
    double_ = std::make_unique<Multigrid<double>>(copied<double>(network_), options_.threads);
  }

  LinearReport solve_one(std::span<const double> rhs, std::span<double> temperatures);

  LinearOptions options_;
  Arrangement arrangement_;
  Conductances<double> network_;
  ConjugateGradients gradients_;
  std::unique_ptr<Multigrid<float>> single_;  // one of the two
  std::unique_ptr<Multigrid<double>> double_;
};

LinearReport MultigridSolver::solve_one(std::span<const double> rhs,
                                        std::span<double> temperatures) {
  arrangement_.read(temperatures, gradients_.x);
  LinearReport report;
  bool done = false;
  for (int pass = 0; pass < pass_limit && !done; ++pass) {
    arrangement_.read(rhs, gradients_.residual);
    Misfit misfit;
    Descent descent;
    run_team(options_.threads, [&](const Member& member) {
      if (pass == 0) gradients_.clear_inactive(member);
      const Misfit fresh = gradients_.subtract_image(member);
      const double goal = options_.tolerance * options_.tolerance * fresh.given;
      const bool met = fresh.given == 0.0 || fresh.residual <= goal ||
                       (pass > 0 && fresh.residual <= fresh.rounding);
      const int left = options_.iteration_limit - report.iterations;
      Descent own;
      if (!met && single_) own = gradients_.improve(*single_, goal, left, member);
      if (!met && double_) own = gradients_.improve(*double_, goal, left, member);
      if (member.leads()) {
        misfit = fresh;
        descent = own;
        done = met;
      }
    });
    if (misfit.given == 0.0) {
      std::fill(temperatures.begin(), temperatures.end(), 0.0);
      return {};
    }
    report.residual = std::sqrt(misfit.residual / misfit.given);
    report.iterations += descent.iterations;
    report.single_precision = single_ != nullptr;
    if (descent.stagnated && single_) go_double();
  }
  if (!done) throw unmet_tolerance(report.residual, options_.tolerance);
  arrangement_.write(gradients_.x, temperatures);
  return report;
}

}  // namespace

std::unique_ptr<LinearSolver> multigrid_solver(const FivePointOperator& network,
                                               const LinearOptions& options) {
  return std::make_unique<MultigridSolver>(network, options);
}

}  // namespace quoin::solver
