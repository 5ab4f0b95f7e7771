// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <string>

#include "cases/model/case.hpp"
#include "tools/answer/results/chance_findings.hpp"

namespace quoin::tools {

/// "in 40 of 100 cases", "in fewer than 1 of 100 cases", "in more than 99 of 100 cases".
[[nodiscard]] std::string of_100(double chance);

/// A chance in two or three sentences. `humidity`, `spread`: of the room, as stated, give or take;
/// relative.
[[nodiscard]] std::string chance_words(const cases::Variant& variant, const Chance& chance,
                                       const cases::Criterion& criterion, double humidity,
                                       double spread);

}  // namespace quoin::tools
