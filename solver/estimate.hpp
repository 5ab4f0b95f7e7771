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

/// The estimate from the same quantity on three grids, each twice as fine as the one before.
/// Where the steps shrink steadily their ratio gives the observed order p, the remaining error is
/// step / (2^p - 1), which is added to the finest value and also taken as the band. The order is
/// never taken above two, that of the scheme away from corners. Where the steps do not shrink the
/// finest value stands with twice the larger step as its band. Source: Richardson's extrapolation
/// with observed order, the usual grid-convergence practice.
[[nodiscard]] Estimate estimate_of(double coarse, double medium, double fine);

/// The same estimate in other units: value * factor + offset.
[[nodiscard]] Estimate scaled(const Estimate& estimate, double factor, double offset);

}  // namespace quoin::solver
