// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <optional>

namespace quoin::tools {

// How well the outside air that a wall feels is known, standard, K. `lag`: how long the inside face
// lags behind the air outside, h. From simulated weather of invented winters; own work.

/// From its temperatures of the past hours. The older ones are taken as their mean.
[[nodiscard]] double felt_from_history(double hours, double lag);

/// From the mean of the day before.
[[nodiscard]] double felt_from_day(double lag);

/// From one value at some hour of the day, or at one that is not stated.
[[nodiscard]] double felt_from_spot(std::optional<double> hour, double lag);

}  // namespace quoin::tools
