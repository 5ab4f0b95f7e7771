// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/findings/question.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Adds to the surface purpose of a variant solved and judged what a thermometer reads on the
/// coldest part of each room, proved. Findings tell it; rows of a sweep do without.
void prove_thermometers(SolvedVariant& solved, const solver::Effort& effort);

}  // namespace quoin::tools
