// SPDX-License-Identifier: Apache-2.0
#include "tests/coverage/coverage.hpp"

#include <algorithm>

#include "tools/answer/survey/explain.hpp"

namespace quoin::testing {
namespace {

bool holds(const tools::Learned& learned, double truth) {
  return learned.low <= truth && truth <= learned.high;
}

const tools::Learned* find(const tools::Explained& explained, const std::string& key) {
  for (const tools::Learned& one : explained.unknowns) {
    if (one.key == key) return &one;
  }
  return nullptr;
}

void count(const MadeSurvey& made, const Recipe& recipe, const tools::SurveyFindings& findings,
           Coverage& coverage) {
  ++coverage.surveys;
  if (findings.explanations.empty()) {
    ++coverage.refused;
    return;
  }
  const auto right =
      std::find_if(findings.explanations.begin(), findings.explanations.end(),
                   [&](const tools::Explained& one) { return one.what.kind == recipe.truth; });
  if (right == findings.explanations.end() || find(*right, "ratio") == nullptr ||
      find(*right, "conductivity") == nullptr) {
    ++coverage.refused;
    return;
  }
  ++coverage.told;
  coverage.ratio += holds(*find(*right, "ratio"), made.ratio) ? 1 : 0;
  coverage.conductivity += holds(*find(*right, "conductivity"), made.conductivity) ? 1 : 0;
  coverage.factor += holds(*find(*right, "fRsi_design_corner"), made.surface_factor) ? 1 : 0;
  coverage.best_right += right == findings.explanations.begin() ? 1 : 0;
  coverage.put_aside += right->log_odds < -2.302585 ? 1 : 0;
  if (findings.named) {
    ++coverage.named;
    coverage.named_right += right == findings.explanations.begin() ? 1 : 0;
  }
}

}  // namespace

Coverage coverage_of(const Recipe& recipe, std::size_t surveys, std::uint32_t first) {
  Coverage coverage;
  for (std::size_t s = 0; s < surveys; ++s) {
    const MadeSurvey made = made_survey(recipe, first + static_cast<std::uint32_t>(s));
    const std::vector<tools::HouseSection> house{{"", &made.source.variants.front()}};
    const tools::WorkedSurvey worked =
        tools::worked_survey(house, made.survey, solver::LinearOptions{});
    count(made, recipe, worked.findings, coverage);
  }
  return coverage;
}

}  // namespace quoin::testing
