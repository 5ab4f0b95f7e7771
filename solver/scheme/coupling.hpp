// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/scheme/physics.hpp"

namespace quoin::solver {

/// Thermal coupling of two airs.
struct Coupling {
  SpaceId a;
  SpaceId b;
  double value = 0.0;  ///< L2D, W/(m K): the middle of the bracket
  double low = 0.0;    ///< the truth lies between low and high
  double high = 0.0;
};

}  // namespace quoin::solver
