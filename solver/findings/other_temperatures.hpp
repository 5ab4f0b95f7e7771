// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings/findings.hpp"

namespace quoin::solver {

/// The share of each air in the temperature of a place. Shape: airs of the field; their sum is 1.
[[nodiscard]] std::vector<double> weights_at(const Field& field, geometry::Point place);

/// A temperature found on three grids, for other temperatures of the spaces: the weighted sum on
/// the finest grid, and what the grids corrected in proportion to the difference of the spaces that
/// were coldest and warmest. Exact where two airs meet; no new solve.
[[nodiscard]] Estimate at_other_temperatures(const Field& field, const std::vector<double>& weights,
                                             const Estimate& found, const SpaceTemperatures& before,
                                             const SpaceTemperatures& now);

/// Brings the temperatures and flows of a solution to other temperatures of the spaces. Which
/// places were found to be cold spots stays as it is.
void change_temperatures(Solution& solution, const SpaceTemperatures& before,
                         const SpaceTemperatures& now);

/// What an air loses to another by ways other than the section, W/(m K) by metre of the section.
struct OtherLoss {
  SpaceId from;
  SpaceId to;
  double by_metre = 0.0;
};

/// The temperatures of the airs that have losses, from their heat balance: what the section brings
/// is what they lose. All others stay as they are. Linear in the temperatures: no new solve.
/// `air`: of each space. Throws: SolveError where an air has no way to any other.
[[nodiscard]] SpaceTemperatures balanced(const SpaceTemperatures& temperatures,
                                         const Per<SpaceId, SpaceId>& air,
                                         const std::vector<OtherLoss>& losses,
                                         const std::vector<Coupling>& couplings);

}  // namespace quoin::solver
