// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/scheme/assembly.hpp"

namespace quoin::solver {

/// The network solved once for each air: that air at 1, all others at 0.
struct Basis {
  std::vector<SpaceId> airs;           ///< those that touch the section, in order of their ids
  std::vector<std::vector<double>> g;  ///< Shape: airs by unknowns
  std::vector<double> space_flow;      ///< from each space into the section. Shape: airs by spaces
  double residual = 0.0;               ///< worst of the linear solves, relative
  int iterations = 0;                  ///< most of the linear solves
  bool fell_back = false;              ///< multigrid failed; the direct method answered
};

/// Flow from air a to air b at 1 K between them, all others at either temperature, W/(m K).
/// Shape: airs by airs, symmetric; the diagonal is the flow of each air to all others.
[[nodiscard]] std::vector<double> couplings(const Basis& basis, const Per<SpaceId, SpaceId>& air);

/// The sum of basis fields, each weighted with the temperature of its air. Shape: g airs by
/// unknowns; the sum unknowns.
[[nodiscard]] std::vector<double> superposed(const std::vector<std::vector<double>>& g,
                                             const std::vector<SpaceId>& airs,
                                             const SpaceTemperatures& spaces);

}  // namespace quoin::solver
