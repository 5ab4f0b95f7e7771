// SPDX-License-Identifier: Apache-2.0
#include "solver/linear/multigrid/panel_solver.hpp"

namespace quoin::solver {

template <typename T>
PanelSolver<T>::PanelSolver(const Conductances<T>& network, const Machine& machine, Arena& arena)
    : rhs(network.layout, arena),
      x(network.layout, arena),
      kernels_(&machine.kernels->level<T>()),
      layout_(network.layout),
      rows_(network.rows[0]),
      north_(network.north),
      tie_(network.tied ? network.tie : Panels<T>(network.layout, arena)),
      inverses_(static_cast<T*>(arena.take(layout_.rows * lane_count * lane_count * sizeof(T)))) {
  const std::size_t slot = layout_.slot(0, 0);
  kernels_->factorise_panel(rows_, layout_.columns,
                            {network.east[slot], north_[slot], tie_[slot], network.ground[slot]},
                            inverses_);
}

template <typename T>
double PanelSolver<T>::solve() {
  if (rows_.empty()) return 0.0;
  const std::size_t slot = layout_.slot(0, 0);
  return kernels_->solve_panel(rows_, {north_[slot], tie_[slot], inverses_}, rhs[slot], x[slot]);
}

template class PanelSolver<float>;
template class PanelSolver<double>;

}  // namespace quoin::solver
