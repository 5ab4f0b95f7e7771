// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "cases/model/survey.hpp"

namespace quoin::tools {

/// Whether readings are fit to tell something: refused, nothing is told from them.
enum class Fit : std::uint8_t { good, weak, refused };

/// One rule that readings have to meet.
struct QualityRule {
  std::string rule;
  std::optional<double> value;  ///< absent: not stated
  std::string unit;
  std::optional<double> good_from;
  std::optional<double> refused_from;
  Fit fit = Fit::good;
  std::string words;
  bool always_told = false;  ///< though it is good
};

struct Quality {
  Fit fit = Fit::good;  ///< the worst of the rules
  std::vector<QualityRule> rules;
  bool may_tell_ratio = true;         ///< a zone can be compared with a reference
  bool may_tell_conductivity = true;  ///< outdoors is known well enough
  bool may_name = true;               ///< enough readings to name an explanation
  bool water_may_evaporate = false;   ///< rain, or a surface wet to the eye
};

/// An air as the wall felt it.
struct FeltAir {
  std::string space;
  double said = 0.0;         ///< degC
  double felt = 0.0;         ///< degC, by the plain wall
  double uncertainty = 0.0;  ///< standard, K
  std::string from;          ///< what it rests on
};

/// What was learned of one unknown: 5, 50 and 95 of 100.
struct Learned {
  std::string key;
  std::string of;
  std::string unit;
  double prior_low = 0.0, prior_median = 0.0, prior_high = 0.0;
  double low = 0.0, median = 0.0, high = 0.0;
  double learned = 0.0;  ///< by how much the sd shrank, 0 to 1
};

/// One reading beside what an explanation expects there.
struct ExpectedReading {
  std::string section;  ///< of a house
  std::string probe;
  double read = 0.0;  ///< degC, or K across a pad
  double expected = 0.0;
  double low = 0.0;  ///< 5 and 95 of 100 readings like this one
  double high = 0.0;
  double pull = 0.0;     ///< (read - expected) / standard uncertainty of both
  std::string left_out;  ///< why it counts for nothing; empty: it counts
};

/// One explanation and how well the readings fit it.
struct Explained {
  cases::Explanation what;
  double log_odds = 0.0;    ///< natural logarithm of its evidence over that of the best
  double odds_error = 0.0;  ///< sd of it by sampling
  double agreement = 1.0;   ///< how often readings that follow it would lie off further
  double effective = 0.0;   ///< independent draws
  std::vector<Learned> unknowns;
  std::vector<ExpectedReading> readings;
};

/// What to measure next.
struct NextStep {
  std::string what;
  std::string target;
  double width_from = 0.0;  ///< standard uncertainty of the target now, of its own unit
  double width_to = 0.0;
  std::string words;
};

/// All that a survey tells.
struct SurveyFindings {
  Quality quality;
  std::vector<FeltAir> airs;
  std::vector<Explained> explanations;  ///< the best first; none where refused
  double lowest_odds = 1.0;  ///< of the best to the next, whatever of the priors is changed
  double lowest_odds_to_drawn = 1.0;
  bool named = false;  ///< the best may be named
  std::vector<NextStep> next;
  std::vector<std::string> words;
  double basis_error = 0.0;  ///< K
  std::size_t solves = 0;
};

}  // namespace quoin::tools
