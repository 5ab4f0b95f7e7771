// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/answer/survey/hypotheses.hpp"

namespace quoin::tools {

/// A survey worked out: the model its readings rest on, what each explanation makes of them, and
/// what is told.
struct WorkedSurvey {
  SurveyModel model;
  std::vector<InferredExplanation> inferred;  ///< the best first; none where refused
  SurveyFindings findings;
};

/// Works a survey out. The variants must outlive the result. Throws: SolveError.
[[nodiscard]] WorkedSurvey worked_survey(const std::vector<HouseSection>& house,
                                         const cases::Survey& survey,
                                         const solver::LinearOptions& options);

/// 5, 50 and 95 of 100, and the sd.
struct Spread {
  double low = 0.0;
  double median = 0.0;
  double high = 0.0;
  double sd = 0.0;
};
[[nodiscard]] Spread spread_of(const Weighted& weighted);

}  // namespace quoin::tools
