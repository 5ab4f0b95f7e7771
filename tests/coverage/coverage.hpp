// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>

#include "tests/coverage/made_survey.hpp"

namespace quoin::testing {

/// How often what is told of made-up surveys is right.
struct Coverage {
  std::size_t surveys = 0;
  std::size_t refused = 0;  ///< or without ranges
  std::size_t ratio = 0;    ///< 90 of 100 ranges that hold the truth
  std::size_t conductivity = 0;
  std::size_t factor = 0;  ///< of the lowest fRsi
  std::size_t told = 0;    ///< surveys with ranges
  std::size_t best_right = 0;
  std::size_t put_aside = 0;  ///< the truth ten times worse than the best
  std::size_t named = 0;
  std::size_t named_right = 0;

  [[nodiscard]] double share(std::size_t of) const {
    return told == 0 ? 0.0 : static_cast<double>(of) / static_cast<double>(told);
  }
};

/// Works out surveys of one kind, seeds from `first` on, and counts.
[[nodiscard]] Coverage coverage_of(const Recipe& recipe, std::size_t surveys, std::uint32_t first);

}  // namespace quoin::testing
