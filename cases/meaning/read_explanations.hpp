// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>
#include <vector>

#include "cases/model/survey.hpp"
#include "cases/text/fault_list.hpp"
#include "cases/text/yaml_tree.hpp"

namespace quoin::cases {

/// What explanations may be of.
struct ExplanationNames {
  std::vector<std::string> zones;
  std::vector<std::string> stretches;
  std::vector<std::string> instruments;
  std::vector<std::string> outside;  ///< spaces of which no history is known
};

/// The explanations that a list of a survey names.
[[nodiscard]] std::vector<Explanation> explanations_in(const Node& list,
                                                       const ExplanationNames& known,
                                                       FaultList& faults);

/// "one of: a, b"; `none` where nothing is known.
[[nodiscard]] std::string list_words(const std::vector<std::string>& known,
                                     const std::string& none);

/// Refuses more zones and stretches than a survey can be worked out for where no explanation is
/// listed, as all that apply to them are tried then. `places`: where they stand.
void check_number(const std::vector<Mark>& places, FaultList& faults);

}  // namespace quoin::cases
