// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>
#include <string>

#include "cases/model/case.hpp"
#include "tools/answer/results/chance_findings.hpp"

namespace quoin::tools {

/// "in 40 of 100 cases", "in fewer than 1 of 100 cases", "in more than 99 of 100 cases".
[[nodiscard]] std::string of_100(double chance);

/// What words tell of the air of a room beside its chance.
struct ChanceAir {
  double humidity = 0.0;            ///< as stated, relative
  double spread = 0.0;              ///< give or take, relative
  std::optional<double> by_months;  ///< the chance in a month of the climate drawn at random
};

/// A chance in two or three sentences.
[[nodiscard]] std::string chance_words(const cases::Variant& variant, const Chance& chance,
                                       const cases::Criterion& criterion, const ChanceAir& air);

/// Whether what is open of a chance lies in the air of the household, and not in the wall.
[[nodiscard]] bool household_carries(const Chance& chance);

}  // namespace quoin::tools
