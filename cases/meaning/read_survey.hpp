// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "cases/grammar/written_survey.hpp"
#include "cases/model/survey.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/files.hpp"

namespace quoin::cases {

struct Variant;

/// A section that a survey reads, and what its file calls it; the only one has no name.
struct ReadSection {
  std::string name;
  const Variant* variant = nullptr;
};

/// The survey of a written one, its names looked up in the sections. `node`: what it was read from.
/// Histories are read through `files`. Readings are not looked at.
[[nodiscard]] Survey survey_of(const WrittenSurvey& written, const Node& node,
                               const std::vector<ReadSection>& sections, const Files& files,
                               FaultList& faults);

}  // namespace quoin::cases
