// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/answer/results/results.hpp"

namespace quoin::tools {

/// Adds to what a survey tells that the household carries the doubt, where it does so for every
/// criterion of the variants that is neither unlikely nor near certain to be broken: then no
/// reading of a wall is the next, but a log of the room's humidity. Nothing where readings tell
/// nothing.
void tell_household_doubt(const std::vector<const SolvedVariant*>& variants,
                          const cases::Household& household, SurveyFindings& findings);

}  // namespace quoin::tools
