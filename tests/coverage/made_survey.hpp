// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <random>
#include <string>
#include <vector>

#include "cases/model/case.hpp"
#include "cases/model/survey.hpp"

/// Surveys made up from a known truth, to see how often ranges that are told hold it.
namespace quoin::testing {

/// The details that surveys are made of.
enum class Detail : std::uint8_t {
  corner_225,
  corner_327,
  wall_225,
  reveal_327,
  foot_225,
  corner_500
};

/// What is otherwise in the truth than the inference takes it to be.
enum class Wrong : std::uint8_t {
  nothing,
  rough,        ///< readings rougher by 0.4 K than said
  wild,         ///< one reading in eight off by kelvins
  thermometer,  ///< 1 K off
  extent,       ///< the zone is about half as long as drawn
  resistance,   ///< Rsi two sd off
  afternoon,    ///< outdoors read at 15 h, off by 3 K
  graded,       ///< the zone conducts less and less away from the angle
};

struct Recipe {
  Detail detail = Detail::corner_225;
  cases::ExplanationKind truth = cases::ExplanationKind::conducts_better;
  Wrong wrong = Wrong::nothing;
  bool few = false;  ///< four readings fewer
};

/// A survey and what is true of it.
struct MadeSurvey {
  cases::Case source;
  cases::Survey survey;
  std::string of;  ///< the name of the zone
  double ratio = 1.0;
  double conductivity = 0.0;    ///< of the brick outside of the zone, W/(m K)
  double surface_factor = 0.0;  ///< lowest fRsi with the resistances for surface temperature
};

/// The same numbers for the same seed.
[[nodiscard]] MadeSurvey made_survey(const Recipe& recipe, std::uint32_t seed);

}  // namespace quoin::testing
