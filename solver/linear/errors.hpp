// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <stdexcept>

namespace quoin::solver {

/// The numerics failed: a singular network, a tolerance out of reach, a law of physics broken by a
/// solution.
struct SolveError : std::runtime_error {
  using std::runtime_error::runtime_error;
};

}  // namespace quoin::solver
