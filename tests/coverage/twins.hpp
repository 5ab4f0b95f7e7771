// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>

#include "tests/coverage/made_survey.hpp"

namespace quoin::testing {

/// What a worse way to work out a survey leaves away, so that its ranges hold the truth too rarely.
enum class Slip : std::uint8_t {
  naive,        ///< least squares of conductivity and ratio; thermometers and airs are as said
  fixed_scale,  ///< readings are as good as is said of them
  one_extent,   ///< zones reach as far as they are drawn
  weighted,     ///< ranges from the mode, by the weights of the readings as they happen to lie
};

/// Whether ranges of 9 in 10 worked out so hold the truth.
struct SlipHeld {
  bool ratio = false;
  bool conductivity = false;
};

/// Of the explanation that is true; none where the readings may not tell of it.
[[nodiscard]] std::optional<SlipHeld> held_with(Slip slip, const MadeSurvey& made);

}  // namespace quoin::testing
