// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/linear/multigrid/multigrid.hpp"
#include "solver/linear/multigrid/team.hpp"

namespace quoin::solver {

/// How far conjugate gradients came.
struct Descent {
  int iterations = 0;
  bool stagnated = false;  ///< ended early: no progress, or the preconditioner is not positive
};

/// Squared norms that judge an answer.
struct Misfit {
  double given = 0.0;     ///< of the right-hand side
  double residual = 0.0;  ///< of rhs - A x
  double rounding = 0.0;  ///< of what rounding x to double may contribute to it
};

/// Conjugate gradients in double precision on a network, preconditioned by a multigrid cycle. All
/// functions are called by every member of a team and return the same to each, whatever its size.
class ConjugateGradients {
 public:
  ConjugateGradients(const Conductances<double>& network, const Machine& machine, Arena& arena);

  Panels<double> x;
  Panels<double> residual;  ///< takes the right-hand side first

  /// Sets x to 0 on inactive nodes, whatever it was.
  void clear_inactive(const Member& member);
  /// Turns the right-hand side into the residual of x; on inactive nodes it is 0.
  [[nodiscard]] Misfit subtract_image(const Member& member);

  /// Improves x until the squared norm of the residual is at most the goal.
  template <typename T>
  [[nodiscard]] Descent improve(Multigrid<T>& preconditioner, double goal, int iteration_limit,
                                const Member& member);

 private:
  template <typename T>
  [[nodiscard]] double take_step(Panels<T>& given, double step, const Member& member);
  void move(double step, const Member& member);
  template <typename T>
  [[nodiscard]] double turn(const Panels<T>& downhill, double step, double share,
                            const Member& member);

  /// Calls act(group, begin, end) with those panels of a group that fall to a member.
  template <typename Act>
  void for_own_runs(const Member& member, const Act& act) const;
  /// Calls act(slot, rows, number) for each of these panels.
  template <typename Act>
  void for_own_panels(const Member& member, const Act& act) const;
  /// Adds up what the members left for each panel, in one order.
  [[nodiscard]] double total(std::size_t first, const Member& member) const;

  [[nodiscard]] Links<double> links(std::size_t slot) const;
  [[nodiscard]] static Around around(const Panels<double>& values, std::size_t slot) {
    return {values[slot], values[slot + 1], values[slot - 1]};
  }

  const PanelKernels* kernels_;
  const Conductances<double>* network_;
  Panels<double> direction_;
  Panels<double> image_;      // A times direction
  std::vector<double> sums_;  // up to three for each panel
};

}  // namespace quoin::solver
