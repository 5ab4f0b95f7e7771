// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <memory>
#include <optional>
#include <vector>

#include "solver/linear/multigrid/level.hpp"
#include "solver/linear/multigrid/panel_solver.hpp"

namespace quoin::solver {

/// Whether rounding to single precision could spoil the relaxation of some column: in its pivots it
/// acts as a ground of either sign, as large as an epsilon of the conductances along the column.
template <typename T>
[[nodiscard]] bool needs_double_precision(const Conductances<T>& network);

/// Semicoarsening multigrid: one V-cycle from x = 0 as a symmetric positive definite
/// preconditioner. Every grid keeps all rows and every second column of the one above; the last
/// is a single panel, solved exactly.
/// In single precision (T = float) those of the coarser grids that need double precision have it;
/// they are small.
template <typename T>
class Multigrid {
 public:
  Multigrid(const Conductances<T>& network, const Machine& machine, Arena& arena);

  [[nodiscard]] const PanelLayout& layout() const { return layout_; }
  [[nodiscard]] Panels<T>& rhs() { return base_ && grids_.empty() ? base_->rhs : level(0).rhs; }
  [[nodiscard]] const Panels<T>& x() const {
    return base_ && grids_.empty() ? base_->x : grids_.front().level->x;
  }

  /// x from rhs, by all members of a team together. Writes rhs . x of each panel that has active
  /// rows into products, if any are wanted.
  void cycle(const Member& member, double* products = nullptr);

 private:
  struct Grid {
    std::unique_ptr<Level<T>> level;
    /// What goes down to the next coarser grid and what comes up from it, where that grid deals
    /// out its columns anew or is in double.
    std::optional<Panels<T>> down;
    std::optional<Panels<T>> up;
  };

  [[nodiscard]] Level<T>& level(std::size_t l) { return *grids_[l].level; }
  void descend(std::size_t l, const Member& member);
  void ascend(std::size_t l, const Member& member, double* products);

  PanelLayout layout_;
  std::vector<Grid> grids_;
  // What follows below the last grid: one of the two.
  std::unique_ptr<PanelSolver<T>> base_;
  std::unique_ptr<Multigrid<double>> tail_;
};

}  // namespace quoin::solver
