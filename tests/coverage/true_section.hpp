// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <random>
#include <vector>

#include "tests/coverage/made_survey.hpp"
#include "tools/answer/survey/survey_model.hpp"

namespace quoin::testing {

/// The section of a made-up survey as it truly is, on a mesh of its own finer than that of the
/// inference, solved in full.
struct TrueSection {
  tools::SurveyModel model;      ///< of the true survey, without fields
  tools::Hypothesis hypothesis;  ///< what is true
  std::vector<double> unknowns;  ///< at their true values
  solver::Setting setting;       ///< of heat flow
};

/// `survey`: with the true zones; must outlive the result. `spread`: standard normal values, as
/// many as there are unknowns at least.
[[nodiscard]] TrueSection true_section(const cases::Variant& variant, const cases::Survey& survey,
                                       const Recipe& recipe, const cases::Explanation& truth,
                                       const std::vector<double>& spread);

/// The temperature of what the sensor of each reading covers, a little beside where it is said to
/// be, or the difference across its pad. In the order of the readings of the model.
[[nodiscard]] std::vector<double> true_readings(const TrueSection& section, const Recipe& recipe,
                                                const std::vector<std::vector<double>>& hourly,
                                                std::mt19937& random);

/// The lowest fRsi of fabric with the resistances for surface temperature.
[[nodiscard]] double true_factor(const TrueSection& section);

}  // namespace quoin::testing
