// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "tools/answer/survey/chance_findings.hpp"
#include "tools/answer/survey/survey_findings.hpp"
#include "tools/text_table.hpp"

namespace quoin::tools {

/// What a survey tells, for a terminal.
[[nodiscard]] std::string survey_text(const SurveyFindings& findings, const TextStyle& style);

/// A variant's name with its chances.
struct NamedChances {
  std::string variant;
  const std::vector<Chance>* chances = nullptr;
};

/// The chances of all variants, for a terminal. Empty where there are none.
[[nodiscard]] std::string chance_text(const std::vector<NamedChances>& variants,
                                      const TextStyle& style);

}  // namespace quoin::tools
