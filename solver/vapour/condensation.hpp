// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings/findings.hpp"
#include "solver/vapour/vapour.hpp"
#include "solver/vapour/vapour_places.hpp"

namespace quoin::solver {

/// The finest grid of a solution and the same with half as many cells each way, on which the bands
/// of what vapour does rest.
struct VapourGrids {
  const Field& fine;
  Field coarse;
  const Solution& solution;
};

[[nodiscard]] VapourGrids vapour_grids(const Solution& solution, const LinearOptions& options);

/// Wanted half width of the band of a rate, by the sum of all rates.
inline constexpr double vapour_band = 0.002;

/// Where vapour condenses and how fast.
struct CondensingPlace {
  Meeting meeting;
  std::size_t part = 0;  ///< where two meet in several places, see Site
  /// Of the line where the two meet and it condenses, m; 0 within a material, and where grids do
  /// not agree on how it is spread.
  double length = 0.0;
  Estimate rate;         ///< kg/(m s), by metre of the section
  geometry::Point most;  ///< where most condenses
};

/// Steady diffusion at one set of conditions.
struct Condensation {
  VapourField field;                    ///< on the finest grid of the solution
  std::vector<CondensingPlace> places;  ///< fastest first
  geometry::Point dampest;              ///< where the pores are most humid
  double humidity = 0.0;                ///< there, relative; 1 where it condenses
};

/// The rates come from grids that are cut in two each way until each band is as wanted, or the next
/// grid would have too many nodes; a grid that shows slopes in steps is not, as it would come no
/// nearer to them. Throws: SolveError.
[[nodiscard]] Condensation condensation_at(const VapourGrids& grids,
                                           const SpaceTemperatures& temperatures,
                                           const VapourPhysics& physics,
                                           const SpacePressures& pressures,
                                           const LinearOptions& options);

/// What two grids agree on at a place.
struct Agreed {
  Estimate amount;  ///< the sum of the finer grid
  double length =
      0.0;  ///< its length; 0 where they agree on the sum alone, not on how it is spread
};

/// Compares a place of a grid with the same of one with half as many cells. Twice the
/// difference of the sums stands for what the finer one is still off by: at corners the order of
/// its convergence is below one. A sum that one grid alone has counts whole.
[[nodiscard]] Agreed agreed(const Gathered& fine, const std::vector<Gathered>& coarse);

}  // namespace quoin::solver
