// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <string>
#include <vector>

#include "cases/model/survey.hpp"

namespace quoin::testing {

/// The details that surveys are made of.
enum class Detail : std::uint8_t {
  corner_225,
  corner_327,
  corner_500,
  wall_225,
  reveal_327,
  foot_225,
};

/// A detail as a case file, and where it is read.
struct DrawnDetail {
  std::string text;
  std::string room;  ///< the space inside
  cases::SurveyBox zone;
  cases::SurveyBox half_zone;  ///< about half as far along the surface
  cases::SurveyBox stretch;
  std::vector<std::string> inside;   ///< probes of the room, those in the zone first
  std::vector<std::string> outside;  ///< probes of outside faces
};

[[nodiscard]] DrawnDetail drawn_detail(Detail detail);

}  // namespace quoin::testing
