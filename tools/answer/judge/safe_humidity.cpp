// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/judge/safe_humidity.hpp"

#include <algorithm>
#include <cmath>

namespace quoin::tools {

std::optional<double> safe_humidity(const SolvedVariant& solved,
                                    const solver::AirSurface& surface) {
  constexpr double driest = 0.35;  // that people live in; common practice, no source
  const cases::Space& room = solved.variant.spaces[surface.air];
  if (!room.humidity) return std::nullopt;
  std::optional<double> lowest;
  for (const Chance& chance : solved.chances) {
    if (chance.space != surface.air || !chance.highest_safe_humidity) continue;
    lowest = std::min(lowest.value_or(1.0), *chance.highest_safe_humidity);
  }
  if (!lowest) return std::nullopt;
  const double said = std::floor(100 * *lowest + 1e-9) / 100;
  // What is stated is the middle of what is taken: a room may pass more than that now and then.
  const double spread = room.humidity_spread.value_or(cases::Household().humidity);
  if (said < driest || said >= *room.humidity + spread) return std::nullopt;
  return said;
}

}  // namespace quoin::tools
