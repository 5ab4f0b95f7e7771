// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <utility>
#include <vector>

#include "tools/answer/survey/survey_model.hpp"

namespace quoin::tools {

/// What decides the resistance of a kind of surface: each unknown and of what.
[[nodiscard]] std::vector<std::pair<UnknownKind, std::string>> surface_unknowns(
    const SurveyModel& model, const SurveyedSection& section, const SurfaceKind& kind);

/// Fills the unknowns of a model and the settings its sections have where all factors are one.
/// Those of one name are shared by all sections.
void list_unknowns(SurveyModel& model);

/// Whether a material is masonry whose conductivity is not known well: fabric, neither insulation
/// nor a coat of plaster. Common practice, no source.
[[nodiscard]] bool is_masonry(const SurveyedSection& section, cases::RegionId region);

/// The standard deviation of the logarithm of a region's conductivity.
[[nodiscard]] double conductivity_spread(const cases::Region& region);

}  // namespace quoin::tools
