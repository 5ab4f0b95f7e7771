// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "solver/findings/question.hpp"

namespace quoin::solver {

// Triangles beside a grid: another method on another mesh, which proves what the grid estimates.
// Fields and values of points stay the grid's. Where triangles cannot tell, nothing is added; a
// solution on triangles has all of it already. Where both methods differ by more than their bands
// the solution gets a check that does not hold.

/// A temperature of the surfaces of a room on which a judgement hangs, degC.
struct RoomLimit {
  SpaceId air;
  double temperature = 0.0;
};

/// Adds what a thermometer reads on the coldest part of each room, proved: within 5 times the
/// half width asked for, and within that itself where a limit lies between the bounds, as far as
/// the effort allows.
void prove_thermometers(const Question& question, const Effort& effort,
                        const std::vector<RoomLimit>& limits, Solution& solution);

/// Narrows the brackets of the couplings by those of triangles where the grid's are wider than
/// asked for; the value stays the middle.
void prove_couplings(const Question& question, const Effort& effort, Solution& solution);

}  // namespace quoin::solver
