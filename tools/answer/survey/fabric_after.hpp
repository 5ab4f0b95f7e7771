// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "tools/answer/survey/chance.hpp"
#include "tools/answer/survey/explain.hpp"

namespace quoin::tools {

/// A survey whose zones reach as far as their material wherever they reached its ends: a layer
/// more inside moves the masonry on the sheet. For fields of variants; it has no readings.
[[nodiscard]] cases::Survey carried_over(const SurveyModel& model);

/// The fabric after reading, for a field of some variant of a section: all explanations that are
/// not put aside, by their odds. The survey must have told something. About `draws` states, not
/// solved yet.
[[nodiscard]] FabricDraws fabric_after(const WorkedSurvey& worked, const SurfaceField& field,
                                       const std::string& section, std::size_t draws);

}  // namespace quoin::tools
