// SPDX-License-Identifier: Apache-2.0
#pragma once

#include "tools/answer/survey/survey_model.hpp"

namespace quoin::tools {

/// Fills the readings of a model: where each is, what stands before and behind it, with what it was
/// taken, and what of each section is watched for it.
void place_readings(SurveyModel& model);

/// Whether a reading was taken by its radiation off a surface that reflects too much for it.
[[nodiscard]] bool is_too_shiny(const SurveyedReading& reading);

/// Adds to each reading what its sensor may stand beside its place, and leaves out what cannot be:
/// surfaces beyond the airs. Call it once the sections are solved.
void place_beside(SurveyModel& model);

}  // namespace quoin::tools
