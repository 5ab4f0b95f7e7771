// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/solution.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Adds to the chances of a variant the thickness with which nine in ten cases hold, where the case
/// asks for one: that which is enough for a room as much more humid as nine in ten cases are worse
/// than the case as stated. Takes it that this does not change with the thickness.
/// Throws: SolveError.
void add_enough_at_ninety(SolvedVariant& solved, const solver::Effort& effort);

}  // namespace quoin::tools
