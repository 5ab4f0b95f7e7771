// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/results.hpp"

namespace quoin::tools {

/// The humidity side of every inside air whose humidity is known, at its coldest spot.
[[nodiscard]] std::vector<AirHumidity> humidities(const SolvedVariant& solved);

/// That of one air; null where its humidity is not known.
[[nodiscard]] const AirHumidity* humidity_of(const SolvedVariant& solved, SpaceId air);

/// Every criterion judged in every inside air it can be judged in.
[[nodiscard]] std::vector<Verdict> verdicts(const SolvedVariant& solved);

}  // namespace quoin::tools
