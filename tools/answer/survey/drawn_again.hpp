// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "solver/survey/posterior.hpp"

namespace quoin::tools {

/// Draws anew from nearer where the weight of a sample lies, until its draws are worth a fair share
/// of their number. Where readings pull apart the unknowns lie in the shape of a funnel, of which
/// the mode is the narrow end.
void draw_again(const solver::Inference& inference, const solver::StandardDraws& standard,
                solver::Sample& sample);

}  // namespace quoin::tools
