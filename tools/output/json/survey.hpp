// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <nlohmann/json.hpp>
#include <vector>

#include "cases/model/case.hpp"
#include "tools/answer/results/chance_findings.hpp"
#include "tools/answer/results/survey_findings.hpp"

namespace quoin::tools {

/// What a survey tells, as `survey` of the findings.
[[nodiscard]] nlohmann::ordered_json survey_json(const SurveyFindings& findings);

/// The chances of a variant, as its `chance`.
[[nodiscard]] nlohmann::ordered_json chance_json(const std::vector<Chance>& chances,
                                                 const cases::Variant& variant);

}  // namespace quoin::tools
