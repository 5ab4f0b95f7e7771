// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <span>
#include <vector>

#include "solver/linear/errors.hpp"
#include "solver/linear/linear.hpp"

namespace quoin::solver {

/// How well an answer satisfies its system.
struct Residual {
  double relative = 0.0;  ///< |rhs - A T| / |rhs|; 0 where both are 0
  double rounding = 0.0;  ///< what rounding T to double alone may leave, same scale

  /// A residual below rounding is as good as the numbers can be.
  [[nodiscard]] bool meets(double tolerance) const {
    return relative <= tolerance || relative <= rounding;
  }
};

/// The diagonal of the system, W/(m K): 0 marks an inactive node. Shape: all nx
/// * ny.
[[nodiscard]] std::vector<double> diagonal_of(const FivePointOperator& network);

/// Judges rhs - A T as it was found. Shape: all alike.
[[nodiscard]] Residual judged(std::span<const double> residual, std::span<const double> diagonal,
                              std::span<const double> rhs, std::span<const double> temperatures);

/// Computed afresh from the answer.
[[nodiscard]] Residual residual_of(const FivePointOperator& network,
                                   std::span<const double> diagonal, std::span<const double> rhs,
                                   std::span<const double> temperatures);

/// Throws: invalid_argument unless both hold the same whole number of systems of that size.
void check_right_hand_sides(std::size_t size, std::span<const double> rhs,
                            std::span<const double> temperatures);

/// What to throw where an answer does not meet the tolerance.
[[nodiscard]] SolveError unmet_tolerance(double residual, double tolerance);

}  // namespace quoin::solver
