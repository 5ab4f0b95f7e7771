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

/// A number from one grid, as the gap between two schemes judges it.
struct TwoSided {
  double value = 0.0;  ///< by the nodes
  double lacks = 0.0;  ///< value + lacks is the middle of both schemes
  double gap = 0.0;    ///< what it would lack if nothing of the gap cancelled; never less
  double local = 0.0;  ///< what the gap does not see of the place itself; never less than 0
};

/// The estimate from the same quantity on two grids, the second twice as fine. The value is that of
/// the finer one, so that it agrees with the field. Its band is what it lacks and, for what the
/// middle itself is off, the step between the middles of both grids or a share of the gap,
/// whichever is larger, and what the gap does not see. The grids converge steadily where the gap
/// shrinks by three tenths or more. Source: of the share, trial on random sections, which a test
/// repeats.
[[nodiscard]] Estimate estimate_of(const TwoSided& coarse, const TwoSided& fine);

/// What that band is at least, whatever the coarser grid says.
[[nodiscard]] double least_band(const TwoSided& fine);

/// The same estimate in other units: value * factor + offset.
[[nodiscard]] Estimate scaled(const Estimate& estimate, double factor, double offset);

}  // namespace quoin::solver
