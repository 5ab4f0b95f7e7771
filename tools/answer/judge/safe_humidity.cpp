// SPDX-License-Identifier: Apache-2.0
#include "tools/answer/judge/safe_humidity.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include "tools/answer/judge/outcome.hpp"
#include "tools/grade.hpp"
#include "tools/judge.hpp"
#include "tools/physics.hpp"

namespace quoin::tools {

std::optional<double> safe_humidity(const SolvedVariant& solved,
                                    const solver::AirSurface& surface) {
  constexpr int driest = 35;  // %, that people live in; common practice, no source
  cases::Space room = solved.variant.spaces[surface.air];
  if (!room.humidity) return std::nullopt;
  const double outside = solved.variant.spaces[outside_of(solved.variant)].temperature;
  std::vector<materials::Test> limits{mould_limit().test};
  for (const cases::Criterion& criterion : solved.variant.criteria) {
    if (materials::needs_humidity(criterion.test)) limits.push_back(criterion.test);
  }
  const int now = static_cast<int>(std::ceil(100.0 * *room.humidity)) - 1;
  for (int percent = now; percent >= driest; --percent) {
    room.humidity = percent / 100.0;
    const bool safe = std::all_of(limits.begin(), limits.end(), [&](const auto& limit) {
      return grade_of(limit, room, surface.coldest, outside).chance <= marginal_chance;
    });
    if (safe) return room.humidity;
  }
  return std::nullopt;
}

}  // namespace quoin::tools
