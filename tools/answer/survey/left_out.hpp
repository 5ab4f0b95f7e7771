// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

#include "tools/answer/results/survey_findings.hpp"
#include "tools/answer/survey/survey_model.hpp"

namespace quoin::tools {

/// The rule that names readings which count for nothing; refused where none counts. Nothing where
/// all count.
[[nodiscard]] std::optional<QualityRule> left_out_rule(const SurveyModel& model);

}  // namespace quoin::tools
