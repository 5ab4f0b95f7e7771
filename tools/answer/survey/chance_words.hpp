// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "cases/case.hpp"
#include "cases/survey/survey.hpp"
#include "tools/answer/survey/chance_findings.hpp"

namespace quoin::tools {

/// "in 40 of 100 cases", "in fewer than 1 of 100 cases", "in more than 99 of 100 cases".
[[nodiscard]] std::string of_100(double chance);

/// A chance in two or three sentences. `humidity`: of the room, as stated, relative.
[[nodiscard]] std::string chance_words(const cases::Variant& variant, const Chance& chance,
                                       const cases::Criterion& criterion,
                                       const cases::Household& household, double humidity);

}  // namespace quoin::tools
