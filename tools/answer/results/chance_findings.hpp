// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "geometry/ids.hpp"

namespace quoin::tools {

/// What an uncertain input is of.
enum class InputOf : std::uint8_t { fabric, humidity, temperature };

/// How much of the doubt one input carries.
struct ChanceShare {
  std::string input;
  double share = 0.0;  ///< of the variance of the margin, 0 to 1
  InputOf of = InputOf::fabric;
};

/// The margin of a criterion while one input is at 5 and at 95 of 100, all others at their medians.
struct TornadoBar {
  std::string input;
  double low = 0.0;  ///< margin at 5 of 100 of the input, in the unit of the criterion
  double high = 0.0;
  InputOf of = InputOf::fabric;
};

/// The chance that a criterion is broken.
struct Chance {
  std::string criterion;
  geometry::SpaceId space;
  std::string unit;                             ///< of margins: "%RH" or "1"
  double broken = 0.0;                          ///< 0 to 1
  double sampling_error = 0.0;                  ///< sd of it
  double fabric = 0.0;                          ///< with the air as stated
  double household = 0.0;                       ///< with the fabric at its median
  std::vector<ChanceShare> shares;              ///< the largest first
  std::vector<TornadoBar> tornado;              ///< the longest first
  std::optional<double> highest_safe_humidity;  ///< of the room's air, with 9 in 10; relative
  /// By how much the humidity of the room, over that which is safe, is worse in the worst of ten
  /// cases than as stated.
  std::optional<double> worse_in_ninety;
  std::optional<double> enough;  ///< thickness, m, with 9 in 10, where the case asks for it
  bool from_readings = false;
  std::string words;
};

}  // namespace quoin::tools
