// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <utility>
#include <vector>

#include "tests/coverage/made_survey.hpp"
#include "tools/answer/survey/explain.hpp"

namespace quoin::testing {

/// A range that was told, and where the truth lies among the draws it is made of: 0 to 1.
struct Held {
  bool holds = false;
  double rank = 0.0;
};

/// What was told of one made-up survey beside what is true.
struct Outcome {
  std::optional<Held> ratio;  ///< under the explanation that is true; none: no range was told
  std::optional<Held> conductivity;
  std::optional<Held> factor;  ///< of the lowest fRsi; its rank is not known
  bool best_right = false;     ///< the true explanation fits best
  bool put_aside = false;      ///< it fits ten times worse than the best
  bool named = false;
  bool named_right = false;
  std::vector<std::pair<double, bool>> chances;  ///< of each explanation as told, and if it is true
  /// That a criterion is broken, as told, and if it was on a day drawn at random.
  std::vector<std::pair<double, bool>> broken;
  double effective = 0.0;
};

/// Works out one made-up survey.
[[nodiscard]] Outcome outcome_of(const Recipe& recipe, std::uint32_t number);

/// How often what is told of made-up surveys is right.
struct Coverage {
  std::size_t surveys = 0;
  std::size_t told = 0;   ///< those with a range of the ratio
  std::size_t ratio = 0;  ///< 90 of 100 ranges that hold the truth
  std::size_t conductivity_told = 0;
  std::size_t conductivity = 0;
  std::size_t factor_told = 0;
  std::size_t factor = 0;
  std::size_t best_right = 0;
  std::size_t put_aside = 0;
  std::size_t named = 0;
  std::size_t named_right = 0;

  void add(const Outcome& outcome);
};

Coverage& operator+=(Coverage& all, const Coverage& some);

/// Works out surveys of one kind, numbers from `first` on, and counts.
[[nodiscard]] Coverage coverage_of(const Recipe& recipe, std::size_t surveys, std::uint32_t first);

/// A part of some whole; 0 of nothing.
[[nodiscard]] double share(std::size_t part, std::size_t whole);

}  // namespace quoin::testing
