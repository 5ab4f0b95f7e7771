// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid_solver.hpp"

#include <algorithm>
#include <cmath>

#include "solver/linear/direct.hpp"
#include "solver/linear/multigrid/conjugate_gradients.hpp"
#include "solver/linear/residual.hpp"

namespace quoin::solver {

namespace {

/// More threads than one for each so many nodes would only wait for each other.
constexpr std::size_t nodes_per_thread = 20'000;
/// Times that conjugate gradients start from a fresh residual.
constexpr int pass_limit = 6;

/// Seven arrays on the finest grid, eight on each coarser one, and what is dealt out anew. Ample: a
/// second piece of memory costs more than pages that are never touched.
constexpr std::size_t arrays_of_levels = 28;

std::size_t places(const PanelLayout& layout) { return layout.slot_count() * layout.panel_size(); }

/// Where the nodes of the user's grid stand in panels.
class Arrangement {
 public:
  explicit Arrangement(const FivePointOperator& network)
      : upright_(network.nx >= network.ny),
        layout_(panel_layout(std::max(network.nx, network.ny), std::min(network.nx, network.ny))),
        column_stride_(upright_ ? 1 : network.nx),
        row_stride_(upright_ ? network.nx : 1) {
    find_rows(network);
  }

  [[nodiscard]] const PanelLayout& layout() const { return layout_; }
  [[nodiscard]] const ActiveRows& rows() const { return rows_; }
  /// Whether columns run in the direction of j.
  [[nodiscard]] bool upright() const { return upright_; }

  void read(std::span<const double> natural, Panels<double>& panels) const {
    visit([&](std::size_t node, std::size_t slot, std::size_t place) {
      panels[slot][place] = natural[node];
    });
  }
  void write(const Panels<double>& panels, std::span<double> natural) const {
    std::fill(natural.begin(), natural.end(), 0.0);
    visit([&](std::size_t node, std::size_t slot, std::size_t place) {
      natural[node] = panels[slot][place];
    });
  }

 private:
  /// Calls act(node, slot, place in the panel) for all active nodes and some others.
  template <typename Act>
  void visit(const Act& act) const {
    const std::size_t strip = layout_.panels;
    for (std::size_t group = 0; group < layout_.groups; ++group) {
      const std::size_t first = group * lane_count * strip;
      for (std::size_t place = rows_[group].begin; place < rows_[group].end; place += lane_count) {
        const std::size_t row = place / lane_count * row_stride_;
        for (std::size_t q = 0; q < strip; ++q) {
          const std::size_t slot = layout_.slot(group, q);
          std::size_t column = first + q;
          for (std::size_t w = 0; w < lane_count && column < layout_.columns; ++w) {
            act(column * column_stride_ + row, slot, place + w);
            column += strip;
          }
        }
      }
    }
  }

  void find_rows(const FivePointOperator& network) {
    const auto is_active = [&](std::size_t node) {
      return network.ground[node] > 0.0 || network.east[node] > 0.0 || network.north[node] > 0.0 ||
             (node % network.nx > 0 && network.east[node - 1] > 0.0) ||
             (node >= network.nx && network.north[node - network.nx] > 0.0);
    };
    const std::size_t width = layout_.panels * lane_count;
    for (std::size_t group = 0; group < layout_.groups; ++group) {
      const std::size_t end = std::min((group + 1) * width, layout_.columns);
      const auto is_void = [&](std::size_t row) {
        for (std::size_t column = group * width; column < end; ++column) {
          if (is_active(column * column_stride_ + row * row_stride_)) return false;
        }
        return true;
      };
      std::size_t low = 0;
      std::size_t high = layout_.rows;
      while (low < high && is_void(low)) ++low;
      while (low < high && is_void(high - 1)) --high;
      rows_.push_back({low * lane_count, high * lane_count});
    }
  }

  bool upright_;
  PanelLayout layout_;
  std::size_t column_stride_;
  std::size_t row_stride_;
  ActiveRows rows_;
};

Conductances<double> panelled(const FivePointOperator& network, const Arrangement& arrangement,
                              Arena& arena) {
  Conductances<double> result(arrangement.layout(), false, arena);
  result.rows = arrangement.rows();
  const bool upright = arrangement.upright();
  arrangement.read(upright ? network.east : network.north, result.east);
  arrangement.read(upright ? network.north : network.east, result.north);
  arrangement.read(network.ground, result.ground);
  result.write_ghosts();
  return result;
}

/// A copy for a preconditioner to keep.
template <typename T>
Conductances<T> copied(const Conductances<double>& network, Arena& arena) {
  const PanelLayout& layout = network.layout;
  Conductances<T> result(layout, false, arena);
  result.rows = network.rows;
  const auto copy = [](const double* from, T* to, const Rows& rows) {
    for (std::size_t k = rows.begin; k < rows.end; ++k) to[k] = static_cast<T>(from[k]);
  };
  for (std::size_t group = 0; group < layout.groups; ++group) {
    for (std::size_t q = 0; q < layout.panels; ++q) {
      const std::size_t slot = layout.slot(group, q);
      copy(network.east[slot], result.east[slot], network.rows[group]);
      copy(network.north[slot], result.north[slot], network.rows[group]);
      copy(network.ground[slot], result.ground[slot], network.rows[group]);
    }
  }
  result.write_ghosts();
  return result;
}

Machine machine_for(const FivePointOperator& network, const LinearOptions& options) {
  const auto useful = static_cast<int>(network.size() / nodes_per_thread + 1);
  return {std::clamp(options.threads, 1, useful), &panel_kernels(options.register_bytes)};
}

class MultigridSolver : public LinearSolver {
 public:
  MultigridSolver(const FivePointOperator& network, const LinearOptions& options)
      : options_(options),
        machine_(machine_for(network, options)),
        arrangement_(network),
        vectors_(7 * sizeof(double) * places(arrangement_.layout())),
        network_(panelled(network, arrangement_, vectors_)),
        gradients_(network_, machine_, vectors_) {
    if (needs_double_precision(network_)) {
      go_double();
    } else {
      levels_ =
          std::make_unique<Arena>(arrays_of_levels * sizeof(float) * places(arrangement_.layout()));
      single_ =
          std::make_unique<Multigrid<float>>(copied<float>(network_, *levels_), machine_, *levels_);
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
    levels_ =
        std::make_unique<Arena>(arrays_of_levels * sizeof(double) * places(arrangement_.layout()));
    double_ =
        std::make_unique<Multigrid<double>>(copied<double>(network_, *levels_), machine_, *levels_);
  }

  /// As it was given.
  [[nodiscard]] FivePointOperator network() const;
  LinearReport solve_one(std::span<const double> rhs, std::span<double> temperatures);
  LinearReport solve_directly(std::span<const double> rhs, std::span<double> temperatures);

  LinearOptions options_;
  Machine machine_;
  Arrangement arrangement_;
  Arena vectors_;
  Conductances<double> network_;
  ConjugateGradients gradients_;
  std::unique_ptr<Arena> levels_;
  std::unique_ptr<Multigrid<float>> single_;  // one of the three
  std::unique_ptr<Multigrid<double>> double_;
  std::unique_ptr<LinearSolver> direct_;
};

FivePointOperator MultigridSolver::network() const {
  const bool upright = arrangement_.upright();
  FivePointOperator result;
  const PanelLayout& layout = arrangement_.layout();
  result.nx = upright ? layout.columns : layout.rows;
  result.ny = upright ? layout.rows : layout.columns;
  result.east.resize(result.size());
  result.north.resize(result.size());
  result.ground.resize(result.size());
  arrangement_.write(network_.east, upright ? result.east : result.north);
  arrangement_.write(network_.north, upright ? result.north : result.east);
  arrangement_.write(network_.ground, result.ground);
  return result;
}

LinearReport MultigridSolver::solve_directly(std::span<const double> rhs,
                                             std::span<double> temperatures) {
  if (!direct_) {
    single_.reset();
    double_.reset();
    levels_.reset();
    direct_ = direct_solver(network(), options_);
  }
  LinearReport report = direct_->solve(rhs, temperatures).front();
  report.fell_back = true;
  return report;
}

LinearReport MultigridSolver::solve_one(std::span<const double> rhs,
                                        std::span<double> temperatures) {
  // What fails for one right-hand side is slow for the others.
  if (direct_) return solve_directly(rhs, temperatures);
  arrangement_.read(temperatures, gradients_.x);
  LinearReport report;
  bool done = false;
  for (int pass = 0; pass < pass_limit && !done; ++pass) {
    arrangement_.read(rhs, gradients_.residual);
    Misfit misfit;
    Descent descent;
    run_team(machine_.threads, [&](const Member& member) {
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
  if (!done) {
    if (rhs.size() > options_.direct_limit) {
      throw unmet_tolerance(report.residual, options_.tolerance);
    }
    const int in_vain = report.iterations;
    report = solve_directly(rhs, temperatures);
    report.iterations = in_vain;
    return report;
  }
  arrangement_.write(gradients_.x, temperatures);
  return report;
}

}  // namespace

std::unique_ptr<LinearSolver> multigrid_solver(const FivePointOperator& network,
                                               const LinearOptions& options) {
  return std::make_unique<MultigridSolver>(network, options);
}

}  // namespace quoin::solver
