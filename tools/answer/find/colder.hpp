// SPDX-License-Identifier: Apache-2.0
#pragma once

#include <vector>

#include "tools/results.hpp"

namespace quoin::tools {

/// Where the fabric of one air's surfaces is colder than in another variant by more than
/// `noticeable`, K: one place for each stretch that is, the biggest drop first. Only one and the
/// same place counts: where both surfaces run through a point in the same direction, that point;
/// where the surface has moved, the point as far along it from the same named place.
[[nodiscard]] std::vector<Colder> colder_places(const SolvedVariant& first, SpaceId first_air,
                                                const SolvedVariant& later, SpaceId later_air,
                                                double noticeable);

}  // namespace quoin::tools
