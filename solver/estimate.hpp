// SPDX-License-Identifier: Apache-2.0
#pragma once

namespace quoin::solver {

/// A number with its error band: the truth is taken to lie within value - band and value + band.
struct Estimate {
  double value = 0.0;
  double band = 0.0;
  bool asymptotic =
      true;  ///< false: the grids do not yet converge at a steady order; the band is a guess
};

/// The estimate from the same quantity on three grids, each twice as fine as the one before. The
/// value is that of the finest. Where the steps shrink steadily their ratio gives the observed
/// order p (never taken above two, that of the scheme away from corners) and what remains, step /
/// (2^p - 1); the band is what remains or the last step, whichever is larger. Where the steps do
/// not shrink the band is twice the larger step. The value is not moved by what remains: on grids
/// cut unevenly such a move is often too far. Source: Richardson's extrapolation with observed
/// order, the usual grid-convergence practice.
[[nodiscard]] Estimate estimate_of(double coarse, double medium, double fine);

/// Where the three values lead if they go on at their observed order; the finest where they have
/// none.
[[nodiscard]] double limit_of(double coarse, double medium, double fine);

/// The same estimate in other units: value * factor + offset.
[[nodiscard]] Estimate scaled(const Estimate& estimate, double factor, double offset);

}  // namespace quoin::solver
