// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "cases/model/survey.hpp"
#include "solver/linear/linear.hpp"
#include "tools/answer/results/chance_findings.hpp"
#include "tools/answer/results/results.hpp"

namespace quoin::tools {

struct WorkedSurvey;

/// What the chances of a variant rest on beside itself.
struct ChanceGround {
  cases::Household household;
  const WorkedSurvey* worked = nullptr;  ///< null: nothing was read
  std::string section;                   ///< of the house that the variant is of
};

/// The chance that each criterion of a solved variant is broken in each room that it can be judged
/// in. Throws: SolveError.
[[nodiscard]] std::vector<Chance> chances_of(const SolvedVariant& solved,
                                             const ChanceGround& ground,
                                             const solver::LinearOptions& options);

/// What a chance is called by.
[[nodiscard]] Degree degree_of(double chance);

/// Gives the verdicts of a solved variant the degrees that its chances are called by.
void grade_by_chance(SolvedVariant& solved);

}  // namespace quoin::tools
