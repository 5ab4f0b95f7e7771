// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>

#include "cases/model/case.hpp"
#include "cases/model/survey.hpp"
#include "tests/coverage/details.hpp"

/// Surveys made up from a known truth, to see how often ranges that are told hold it.
namespace quoin::testing {

/// What is otherwise in the truth than the inference takes it to be.
enum class Wrong : std::uint8_t {
  nothing,
  rough,        ///< readings rougher by 0.4 K than said
  wild,         ///< one reading in eight off by kelvins
  thermometer,  ///< 1 K off
  extent,       ///< the zone is about half as long as drawn
  resistance,   ///< Rsi two sd off
  afternoon,    ///< outdoors read at 15 h, felt 3 K colder
  graded,       ///< the zone conducts less away from its middle
  evaporation,  ///< the surface of the zone is colder by what evaporates from it
};

/// What is known of the air outside, and what it really was.
enum class Weather : std::uint8_t {
  steady,   ///< off by what is uncertain of it; nothing changes in time
  spot,     ///< the walls are marched through real weather, of which one value is known
  lowest,   ///< the same, of which the lowest and highest of the day are known
  history,  ///< the same, of which two days are known
};

/// What it was read with.
enum class Read : std::uint8_t {
  contact,
  infrared,
  pads,  ///< two more readings: across a pad on the zone and on the reference
};

struct Recipe {
  Detail detail = Detail::corner_225;
  cases::ExplanationKind truth = cases::ExplanationKind::conducts_better;
  Wrong wrong = Wrong::nothing;
  Weather weather = Weather::steady;
  Read read = Read::contact;
  bool few = false;    ///< four readings fewer
  bool brief = false;  ///< no explanations are tried but the section as drawn and those of its zone
};

/// A survey and what is true of it.
struct MadeSurvey {
  cases::Case source;
  cases::Survey survey;
  cases::Explanation truth;
  double ratio = 1.0;
  double conductivity = 0.0;    ///< of the brick outside of the zone, W/(m K)
  double surface_factor = 0.0;  ///< lowest fRsi with the resistances for surface temperature
};

/// The same for the same number; those of different numbers and of different recipes have nothing
/// to do with each other.
[[nodiscard]] MadeSurvey made_survey(const Recipe& recipe, std::uint32_t number);

}  // namespace quoin::testing
