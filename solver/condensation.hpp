// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings.hpp"
#include "solver/vapour.hpp"
#include "solver/vapour_places.hpp"

namespace quoin::solver {

/// The finest grid of a solution and the same with half as many cells each way, on which the bands
/// of what vapour does rest.
struct VapourGrids {
  const Field& fine;
  Field coarse;
};

[[nodiscard]] VapourGrids vapour_grids(const Solution& solution, const LinearOptions& options);

/// Where vapour condenses and how fast.
struct CondensingPlace {
  Meeting meeting;
  std::size_t part = 0;  ///< where two meet in several places, see Site
  double length = 0.0;  ///< of the line where the two meet and it condenses, m; 0 within a material
  Estimate rate;        ///< kg/(m s), by metre of the section
  geometry::Point most;  ///< where most condenses
};

/// Steady diffusion at one set of conditions.
struct Condensation {
  VapourField field;                    ///< on the fine grid
  std::vector<CondensingPlace> places;  ///< fastest first
  geometry::Point dampest;              ///< where the pores are most humid
  double humidity = 0.0;                ///< there, relative; 1 where it condenses
};

/// Throws: SolveError.
[[nodiscard]] Condensation condensation_at(const VapourGrids& grids,
                                           const SpaceTemperatures& temperatures,
                                           const VapourPhysics& physics,
                                           const SpacePressures& pressures,
                                           const LinearOptions& options);

/// The difference between two grids stands for what the finer one is still off by; the order of its
/// convergence is not known. Sums that one grid alone has count whole.
[[nodiscard]] Estimate between_grids(double fine, double coarse);

/// The sum that a list has for the meeting and part of another sum; 0 where it has none.
[[nodiscard]] double amount_at(const std::vector<Gathered>& all, const Gathered& like);

}  // namespace quoin::solver
