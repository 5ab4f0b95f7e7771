// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/answer/results/survey_findings.hpp"
#include "tools/answer/survey/survey_model.hpp"

namespace quoin::tools {

/// Whether the readings of a survey are fit to tell something, rule by rule.
[[nodiscard]] Quality quality_of(const SurveyModel& model);

/// Every air as the inside faces of the plain wall felt it.
[[nodiscard]] std::vector<FeltAir> felt_airs_of(const SurveyModel& model);

}  // namespace quoin::tools
